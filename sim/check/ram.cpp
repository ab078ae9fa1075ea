// ram: the engine, its stack and the rest of the program fit the RAM.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"the part's data sheet, layouts/parts/mcus.json", Trust::read},
};

void find(const Subject& subject, std::vector<Finding>& found) {
    const RamAccount& ram = subject.ledger.ram;
    if (ram.left.value >= 0) return;
    const std::int64_t room = ram.capacity.value - ram.taken.value;
    add_finding(found,
                Severity::must,
                "/mcu",
                {static_cast<double>(ram.total.value), static_cast<double>(room), "bytes"},
                "the display needs " + std::to_string(ram.total.value) + " bytes of RAM (" +
                    std::to_string(ram.engine.value) + " for the engine, " +
                    std::to_string(ram.stack.bytes.value) + " of stack), " + subject.ledger.mcu +
                    " has " + std::to_string(room) + " left (" +
                    std::to_string(ram.capacity.value) + " less " +
                    std::to_string(ram.taken.value) +
                    " taken): " + std::to_string(-ram.left.value) + " bytes have to go");
}

}  // namespace

const Rule ram{
    .name = "ram",
    .sentence = "Display, stack and program fit the RAM.",
    .computed =
        "Bytes of the engine's memory and its stack against the RAM that the rest of the program "
        "leaves.",
    .formula = "engine + stack <= RAM - taken",
    .sources = sources,
    .figures = {},
    .find = find,
};

}  // namespace dialplate::rule

// ram: the engine, its stack and the rest of the program fit the RAM.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource ram_sources[] = {
    {"the part's data sheet, layouts/parts/mcus.json", Trust::read},
    {"common practice, no source: RAM to spare for interrupts", Trust::practice},
};

constexpr RuleFigure ram_figures[] = {
    {"least_spare_bytes", "bytes", "least RAM left beyond the stack", 64.0, 0.0, 100000.0},
};

/// Interrupts of the sketch come on top of the stack that is measured.
void judge_margin(const Subject& subject, std::vector<Finding>& found) {
    const RamAccount& ram = subject.ledger.ram;
    const double least = figure(subject.layout, rule::ram, "least_spare_bytes");
    const auto left = static_cast<double>(ram.left.value);
    if (ram.capacity.value == 0 || left >= least) return;
    add_finding(found,
                Severity::should,
                "/mcu",
                {left, least, "bytes"},
                "the stack has " + number(left) + " bytes of RAM to spare on " +
                    subject.ledger.mcu + ", advised are " + number(least) +
                    " for interrupts and what they call: " + number(least - left) +
                    " bytes have to go",
                ram_sources[1].text);
}

void find_ram(const Subject& subject, std::vector<Finding>& found) {
    const RamAccount& ram = subject.ledger.ram;
    if (ram.left.value >= 0) return judge_margin(subject, found);
    const std::int64_t room = ram.capacity.value - ram.taken.value;
    const std::int64_t needed = ram.total.value + ram.margin.value;
    add_finding(found,
                Severity::must,
                "/mcu",
                {static_cast<double>(needed), static_cast<double>(room), "bytes"},
                "the display needs " + std::to_string(needed) + " bytes of RAM (" +
                    std::to_string(ram.engine.value) + " for the engine, " +
                    std::to_string(ram.stack.bytes.value) + " of stack, " +
                    std::to_string(ram.margin.value) + " kept free for a deeper one), " +
                    subject.ledger.mcu + " has " + std::to_string(room) + " left (" +
                    std::to_string(ram.capacity.value) + " less " +
                    std::to_string(ram.taken.value) +
                    " taken): " + std::to_string(-ram.left.value) + " bytes have to go");
}

}  // namespace

const Rule ram{
    .name = "ram",
    .sentence = "Display, stack and program fit the RAM (must) and leave 64 bytes (should).",
    .computed =
        "Bytes of the engine's memory, its stack and a margin for what no prediction of the stack "
        "knows, against the RAM that the rest of the program leaves.",
    .formula = "engine + stack + margin <= RAM - taken - 64 bytes",
    .sources = ram_sources,
    .figures = ram_figures,
    .find = find_ram,
};

}  // namespace dialplate::rule

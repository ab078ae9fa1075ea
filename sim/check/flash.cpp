// flash: display and the rest of the program fit the flash that the boot loader leaves.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource flash_sources[] = {
    {"the part's data sheet, layouts/parts/mcus.json", Trust::read},
};

void find_flash(const Subject& subject, std::vector<Finding>& found) {
    const FlashAccount& flash = subject.ledger.flash;
    if (flash.left.value >= 0) return;
    const std::int64_t room = flash.capacity.value - flash.boot.value - flash.taken.value;
    add_finding(found,
                Severity::must,
                "/mcu",
                {static_cast<double>(flash.total.value), static_cast<double>(room), "bytes"},
                "the display needs " + std::to_string(flash.total.value) + " bytes of flash, " +
                    subject.ledger.mcu + " has " + std::to_string(room) + " left (" +
                    std::to_string(flash.capacity.value) + " less " +
                    std::to_string(flash.boot.value) + " for the boot loader and " +
                    std::to_string(flash.taken.value) +
                    " taken): " + std::to_string(-flash.left.value) + " bytes have to go");
}

}  // namespace

const Rule flash{
    .name = "flash",
    .sentence = "Display and program fit the flash.",
    .computed =
        "Bytes of image, engine and driver against the flash that the boot loader and the rest of "
        "the program leave.",
    .formula = "image + engine + driver <= flash - boot - taken",
    .sources = flash_sources,
    .figures = {},
    .find = find_flash,
};

}  // namespace dialplate::rule

// flash: display and the rest of the program fit the flash that the boot loader leaves.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

void flash(const Subject& subject, std::vector<Finding>& found) {
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

}  // namespace dialplate::rule

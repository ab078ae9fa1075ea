// update-time: what the display does feels immediate.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr Milliseconds immediate{100.0};  // BUS-21

}  // namespace

void update_time(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    for (const EventTime& event : subject.ledger.time) {
        if (event.time <= immediate) continue;
        const auto page = static_cast<std::size_t>(event.page);
        const std::string pointer = page < layout.pages.size() ? layout.pages[page].pointer : "";
        add_finding(found,
                    Severity::should,
                    pointer,
                    {event.time.value, immediate.value, "ms"},
                    event.event + " takes " + number(event.time.value, 1) + " ms for " +
                        std::to_string(event.bus_bytes.value) + " bytes on the bus, up to " +
                        number(immediate.value) + " ms feel immediate: a faster bus or " +
                        number(100.0 * (1.0 - immediate / event.time)) +
                        " % fewer pixels would reach it");
    }
}

}  // namespace dialplate::rule

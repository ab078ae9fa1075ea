// update-time: what the display does feels immediate. A turn of the page draws the whole glass, which no
// serial bus does in that time: between 100 ms and a second it is noted only.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr Milliseconds immediate{100.0};      // BUS-21
constexpr Milliseconds keeps_thread{1000.0};  // BUS-21

Severity severity_of(const EventTime& event) {
    const bool turns_page = event.kind == EventKind::page;
    return turns_page && event.time <= keeps_thread ? Severity::note : Severity::should;
}

}  // namespace

void update_time(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    for (const EventTime& event : subject.ledger.time) {
        if (event.time <= immediate) continue;
        const auto page = static_cast<std::size_t>(event.page);
        const std::string pointer = page < layout.pages.size() ? layout.pages[page].pointer : "";
        add_finding(found,
                    severity_of(event),
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

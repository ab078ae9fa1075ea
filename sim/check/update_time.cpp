// update-time: what the display does feels immediate. A turn of the page draws the whole glass, which no
// serial bus does in that time: between 100 ms and a second it is noted only.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource update_time_sources[] = {
    {"Miller 1968; Card et al.: 100 ms feel immediate (BUS-21, from memory)", Trust::memory},
};

constexpr RuleFigure update_time_figures[] = {
    {"most_ms", "ms", "time within which a change feels immediate", 100.0, 1.0, 10000.0},
    {"most_page_ms", "ms", "time within which a new page keeps the thread", 1000.0, 1.0, 60000.0},
};

Severity severity_of(const EventTime& event, Milliseconds keeps_thread) {
    const bool turns_page = event.kind == EventKind::page;
    return turns_page && event.time <= keeps_thread ? Severity::note : Severity::should;
}

void find_update_time(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Milliseconds immediate{figure(layout, rule::update_time, "most_ms")};
    const Milliseconds keeps_thread{figure(layout, rule::update_time, "most_page_ms")};
    for (const EventTime& event : subject.ledger.time) {
        if (event.time <= immediate) continue;
        if (event.kind == EventKind::key) continue;  // press-feedback counts more than the drawing
        const auto page = static_cast<std::size_t>(event.page);
        const std::string pointer = page < layout.pages.size() ? layout.pages[page].pointer : "";
        add_finding(found,
                    severity_of(event, keeps_thread),
                    pointer,
                    {event.time.value, immediate.value, "ms"},
                    event.event + " takes " + number(event.time.value, 1) + " ms for " +
                        std::to_string(event.bus_bytes.value) + " bytes on the bus, up to " +
                        number(immediate.value) + " ms feel immediate: a faster bus or " +
                        number(100.0 * (1.0 - immediate / event.time)) +
                        " % fewer pixels would reach it");
    }
}

}  // namespace

const Rule update_time{
    .name = "update-time",
    .sentence = "What happens on the display is there within 100 ms; a new page within a second.",
    .computed =
        "Time from an event to the last pixel of what it changes: bus and decoding, as the ledger "
        "has it. Pressed keys are for press-feedback.",
    .formula = "cycles of the microcontroller / clock",
    .sources = update_time_sources,
    .figures = update_time_figures,
    .find = find_update_time,
};

}  // namespace dialplate::rule

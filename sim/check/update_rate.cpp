// update-rate: the display keeps up with what changes often: a knob that is turned, a meter that moves.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <string>

namespace dialplate::rule {

namespace {

constexpr RuleSource update_rate_sources[] = {
    {"arithmetic: a change may take the time to the next one", Trust::derived},
    {"common practice, no source: 20 detents a second of a knob that is turned fast",
     Trust::practice},
};

constexpr RuleFigure update_rate_figures[] = {
    {"knob_per_second",
     "a second",
     "detents of the tuning knob where the frequency has no \"per_second\"",
     20.0,
     1.0,
     1000.0},
};

/// What the ledger calls the change of a value, and how often it comes.
struct Change {
    std::string event, other_event;
    double per_second = 0;
    bool stated = true;
};

Change change_of(const Layout& layout, const Value& value) {
    const bool dial = value.role == Role::frequency;
    Change change{.event = dial ? "tuning step" : value.name + " change",
                  .other_event = dial ? "" : value.name + " full swing",
                  .per_second = value.per_second.value_or(0.0)};
    if (value.role == Role::band) change.event = "band change";
    if (dial && !value.per_second) {
        change.per_second = figure(layout, rule::update_rate, "knob_per_second");
        change.stated = false;
    }
    return change;
}

void find_update_rate(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    for (const Value& value : layout.values) {
        const Change change = change_of(layout, value);
        if (change.per_second <= 0.0) continue;
        const Milliseconds between{1000.0 / change.per_second};
        for (const EventTime& event : subject.ledger.time) {
            if (event.event != change.event && event.event != change.other_event) continue;
            if (event.time <= between) continue;
            add_finding(
                found,
                change.stated ? Severity::should : Severity::note,
                value.pointer,
                {event.time.value, between.value, "ms"},
                "value \"" + value.name + "\" changes up to " + number(change.per_second, 1) +
                    " times a second" + (change.stated ? "" : " at a fast turn of the knob") +
                    ", every " + number(between.value, 1) + " ms; " + event.event + " takes " +
                    number(event.time.value, 1) +
                    " ms to draw: " + number(1000.0 / event.time.value, 1) +
                    " times a second are shown, " + number(100.0 * (1.0 - between / event.time)) +
                    " % fewer pixels would show them all",
                change.stated ? nullptr : update_rate_sources[1].text);
        }
    }
}

}  // namespace

const Rule update_rate{
    .name = "update-rate",
    .sentence = "A change of a value is drawn before the next one comes.",
    .computed =
        "Time that the ledger has for a change of a value against the time between two changes: "
        "its per_second, "
        "or the detents of a knob for the frequency (note). Of a meter the full swing counts.",
    .formula = "time of the change <= 1 / per_second",
    .sources = update_rate_sources,
    .figures = update_rate_figures,
    .find = find_update_rate,
};

}  // namespace dialplate::rule

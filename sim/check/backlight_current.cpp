// backlight-current: no logic pin feeds the back-light.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource backlight_current_sources[] = {
    {"AVR data sheet: 20 mA advised, 40 mA absolute maximum for a pin (SAF-06)", Trust::memory},
    {"module page: 80 mA for one display of 2.8 in (SAF-06)", Trust::read},
};

constexpr RuleFigure backlight_current_figures[] = {
    {"most_ma",
     "mA",
     "absolute maximum of a pin; other parts than AVRs have less",
     40.0,
     1.0,
     200.0},
    {"advised_most_ma", "mA", "advised current of a pin", 20.0, 1.0, 200.0},
};

void find_backlight_current(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    if (layout.wiring.backlight != Wiring::Backlight::logic_pin) return;
    const double most = figure(layout, rule::backlight_current, "most_ma");
    const double advised = figure(layout, rule::backlight_current, "advised_most_ma");
    constexpr const char* cure =
        ": feed it from the supply through a transistor that the pin switches";
    if (!layout.display.backlight_ma) {
        add_finding(
            found,
            Severity::should,
            "/wiring/backlight",
            "a pin feeds the back-light of " + layout.display.name +
                ", whose current its part does not give; tens of mA are usual, a pin gives " +
                number(advised) + " mA" + cure);
        return;
    }
    const double current = *layout.display.backlight_ma;
    if (current <= advised) return;
    const bool over = current > most;
    add_finding(found,
                over ? Severity::must : Severity::should,
                "/wiring/backlight",
                {current, over ? most : advised, "mA"},
                "a pin feeds the back-light with " + number(current) + " mA, " +
                    (over ? "its absolute maximum is " : "advised are ") +
                    number(over ? most : advised) + " mA" + cure);
    found.back().cure = {
        {.kind = Change::Kind::replace, .pointer = "/wiring/backlight", .value = "\"switched\""}};
}

}  // namespace

const Rule backlight_current{
    .name = "backlight-current",
    .sentence =
        "A pin of the microcontroller does not feed the back-light with more than it gives.",
    .computed =
        "Current of the display's back-light, from its part, where wiring.backlight is logic_pin.",
    .formula = "current <= 40 mA (must), 20 mA (should)",
    .sources = backlight_current_sources,
    .figures = backlight_current_figures,
    .find = find_backlight_current,
};

}  // namespace dialplate::rule

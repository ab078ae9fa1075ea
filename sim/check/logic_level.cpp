// logic-level: no line carries more into the display than its controller takes.
#include "sim/check/rule_list.hpp"
#include "sim/check/supply_limits.hpp"
#include "sim/check/wording.hpp"

#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource logic_level_sources[] = {
    {"data sheet of the controller, layouts/parts/displays.json: logic supply and absolute maximum "
     "(SAF-01)",
     Trust::second_hand},
    {"ATmega328P data sheet, speed grades (MCU-09), and the controller's logic supply (SAF-01)",
     Trust::memory},
    {"a divider 5 V * R2 / (R1 + R2), or a buffer; a resistor in series only bends the clamp "
     "diodes (SAF-02, "
     "SAF-03)",
     Trust::derived},
    {"AVR data sheet: an input is high from 0.6 of the supply (SAF-04)", Trust::memory},
};

constexpr double high_share = 0.6;  // SAF-04

/// The supply that the microcontroller has, or at least needs at its clock.
struct Supply {
    double volts = 0;
    bool stated = false;
};

std::optional<Supply> supply_of(const Layout& layout) {
    if (layout.wiring.supply_v) return Supply{.volts = *layout.wiring.supply_v, .stated = true};
    const auto least = least_supply(layout.mcu, layout.clock);
    return least ? std::optional(Supply{.volts = *least}) : std::nullopt;
}

constexpr const char* cure =
    ": put a divider (1 kohm over 2 kohm makes 3.33 V of 5 V) or a buffer in every line, then set "
    "\"level_shifted\"";

void judge_stated(const Layout& layout, double volts, std::vector<Finding>& found) {
    const Display& display = layout.display;
    const std::string carries =
        "lines of " + number(volts, 2) + " V go into the display, " + display.controller;
    if (display.logic_absolute_max_v && volts > *display.logic_absolute_max_v) {
        add_finding(found,
                    Severity::must,
                    "/wiring/supply_v",
                    {volts, *display.logic_absolute_max_v, "V"},
                    carries + " is destroyed above " + number(*display.logic_absolute_max_v, 2) +
                        " V" + cure);
    } else if (display.logic_supply_max_v && volts > *display.logic_supply_max_v) {
        add_finding(
            found,
            Severity::should,
            "/wiring/supply_v",
            {volts, *display.logic_supply_max_v, "V"},
            carries + " is made for " + number(*display.logic_supply_max_v, 2) + " V" + cure);
    }
}

void find_logic_level(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Display& display = layout.display;
    const std::optional<Supply> supply = supply_of(layout);
    if (!supply) return;
    if (supply->stated && !layout.wiring.level_shifted.value_or(false)) {
        judge_stated(layout, supply->volts, found);
    } else if (!supply->stated && !layout.wiring.level_shifted && display.logic_supply_max_v &&
               supply->volts > *display.logic_supply_max_v) {
        add_finding(found,
                    Severity::note,
                    "/mcu/clock_mhz",
                    {supply->volts, *display.logic_supply_max_v, "V"},
                    layout.mcu.name + " at " + number(layout.clock.value / 1e6, 2) +
                        " MHz needs a supply of " + number(supply->volts, 2) + " V or more, " +
                        display.controller + " takes " + number(*display.logic_supply_max_v, 2) +
                        " V on its lines: shift their levels and say so in \"wiring\"",
                    logic_level_sources[1].text);
    }
    const bool avr = layout.mcu.family.starts_with("avr");
    if (!avr || !supply->stated || !display.logic_supply_max_v) return;
    const double high = high_share * supply->volts;
    if (high <= *display.logic_supply_max_v + 1e-9) return;
    add_finding(found,
                Severity::should,
                "/wiring/supply_v",
                {high, *display.logic_supply_max_v, "V"},
                layout.mcu.name + " on " + number(supply->volts, 2) + " V takes " +
                    number(high, 2) + " V and more as high, the display sends " +
                    number(*display.logic_supply_max_v, 2) + " V at most: lower the supply to " +
                    number(*display.logic_supply_max_v / high_share, 2) + " V",
                logic_level_sources[3].text);
}

}  // namespace

const Rule logic_level{
    .name = "logic-level",
    .sentence =
        "No line carries more into the display than its controller takes, and what it sends back "
        "is read.",
    .computed =
        "Supply of the microcontroller (wiring.supply_v) against the controller's absolute maximum "
        "(must) and its "
        "recommended logic supply (should), unless every line is level_shifted. Without a supply "
        "in the layout, "
        "the least that an ATmega328P needs at its clock is held against it (note). What the "
        "display sends "
        "back has to be high for the microcontroller.",
    .formula =
        "supply <= logic maximum, or level_shifted; 0.6 * supply <= logic supply of the display",
    .sources = logic_level_sources,
    .figures = {},
    .find = find_logic_level,
};

}  // namespace dialplate::rule

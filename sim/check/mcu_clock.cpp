// mcu-clock: the processor runs no faster than its data sheet allows at its supply.
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/supply_limits.hpp"
#include "sim/check/wording.hpp"

#include <optional>
#include <string>

namespace dialplate::rule {

namespace {

constexpr RuleSource mcu_clock_sources[] = {
    {"the part's data sheet, layouts/parts/mcus.json, which has the standing of each figure",
     Trust::read},
    {"ATmega328P data sheet, speed grades, as a forum post quotes them: 10 MHz at 2.7 V to 20 MHz "
     "at 4.5 V (MCU-09)",
     Trust::second_hand},
    {"speed grades of the ATmega2560, ATmega4809, STM32F103C8 and RP2040", Trust::memory},
};

std::string source_of(const Mcu& mcu) {
    const auto mark = mcu.sources.find("speed_grades");
    if (mark == mcu.sources.end()) return "speed grades as the layout gives them";
    return mark->second.text + " (" + mark->second.standing + ")";
}

void judge_supply(const Layout& layout, double supply, std::vector<Finding>& found) {
    const double clock = layout.clock.value / 1e6;
    const std::optional<Hertz> safe = safe_clock(layout.mcu, supply);
    if (!safe) {
        add_finding(found,
                    Severity::note,
                    "/mcu",
                    layout.mcu.name + " has no speed grades, so nothing says whether " +
                        number(clock, 2) + " MHz are safe on " + number(supply, 2) +
                        " V: take them from its data sheet into \"speed_grades\" of the part");
        return;
    }
    if (clock <= safe->value / 1e6 * (1.0 + slack)) return;
    const std::optional<double> volts = least_supply(layout.mcu, layout.clock);
    const double least = layout.mcu.speed_grades.front().volts;
    const std::string allowed =
        supply < least ? "it runs from " + number(least, 2) + " V only"
                       : "its speed grades allow " + number(safe->value / 1e6, 2) + " MHz";
    add_finding(found,
                Severity::should,
                "/mcu/clock_mhz",
                {clock, safe->value / 1e6, "MHz"},
                layout.mcu.name + " runs at " + number(clock, 2) + " MHz on " + number(supply, 2) +
                    " V, " + allowed +
                    (volts ? ": " + number(*volts, 2) + " V" +
                                 (supply < least ? " reach it" : " or a slower clock reach it")
                           : ": a slower clock reaches it"));
    found.back().source = source_of(layout.mcu);
}

void find_mcu_clock(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double clock = layout.clock.value / 1e6;
    const double most = layout.mcu.clock_max.value / 1e6;
    if (most > 0.0 && clock > most * (1.0 + slack)) {
        add_finding(found,
                    Severity::must,
                    "/mcu/clock_mhz",
                    {clock, most, "MHz"},
                    layout.mcu.name + " runs at " + number(clock, 2) +
                        " MHz, its data sheet allows " + number(most, 2) + " MHz");
        return;
    }
    if (layout.wiring.supply_v) judge_supply(layout, *layout.wiring.supply_v, found);
}

}  // namespace

const Rule mcu_clock{
    .name = "mcu-clock",
    .sentence = "The processor's clock is within its data sheet, at the supply that it has.",
    .computed =
        "Clock of the processor against the part's greatest, and, where wiring.supply_v is given, "
        "against what the "
        "part's speed grades (layouts/parts/mcus.json) have as safe at that supply. A note where "
        "they are not known.",
    .formula =
        "clock <= safe clock, a straight line between two speed grades; ATmega328P from 2.7 to 4.5 "
        "V: "
        "10 MHz + (supply - 2.7 V) * 10 MHz / 1.8 V",
    .sources = mcu_clock_sources,
    .figures = {},
    .find = find_mcu_clock,
};

}  // namespace dialplate::rule

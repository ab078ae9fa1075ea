// mcu-clock: the processor runs no faster than its data sheet allows at its supply.
#include "sim/check/rule_list.hpp"
#include "sim/check/supply_limits.hpp"
#include "sim/check/wording.hpp"

#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"the part's data sheet, layouts/parts/mcus.json", Trust::read},
    {"ATmega328P data sheet, speed grades: 10 MHz at 2.7 V to 20 MHz at 4.5 V (MCU-09)",
     Trust::memory},
};

constexpr double slack = 1e-9;  // rounding in the arithmetic, parts of the clock

void find(const Subject& subject, std::vector<Finding>& found) {
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
    if (!layout.wiring.supply_v) return;
    const double supply = *layout.wiring.supply_v;
    const std::optional<Hertz> safe = safe_clock(layout.mcu, supply);
    if (!safe || clock <= safe->value / 1e6 * (1.0 + slack)) return;
    const std::optional<double> volts = least_supply(layout.mcu, layout.clock);
    add_finding(found,
                Severity::should,
                "/mcu/clock_mhz",
                {clock, safe->value / 1e6, "MHz"},
                layout.mcu.name + " runs at " + number(clock, 2) + " MHz on " + number(supply, 2) +
                    " V, its speed grades allow " + number(safe->value / 1e6, 2) + " MHz" +
                    (volts ? ": " + number(*volts, 2) + " V or a slower clock reach it"
                           : ": a slower clock reaches it"),
                sources[1].text);
}

}  // namespace

const Rule mcu_clock{
    .name = "mcu-clock",
    .sentence = "The processor's clock is within its data sheet, at the supply that it has.",
    .computed =
        "Clock of the processor against the part's greatest, and, where wiring.supply_v is given "
        "and the part's "
        "speed grades are known (ATmega328P), against what is safe at that supply.",
    .formula = "clock <= 10 MHz + (supply - 2.7 V) * 10 MHz / 1.8 V",
    .sources = sources,
    .figures = {},
    .find = find,
};

}  // namespace dialplate::rule

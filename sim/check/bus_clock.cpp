// bus-clock: the bus keeps to the write cycle of the display's controller and to what the processor can do.
//
// Many builds run their controllers at two to four times the data sheet's clock: that is said, not refused.
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/wording.hpp"
#include "sim/display/bus_time.hpp"

#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource bus_clock_sources[] = {
    {"data sheet of the controller, layouts/parts/displays.json (BUS-06 to BUS-11)",
     Trust::second_hand},
    {"AVR data sheet, SPSR.SPI2X: at most half the processor's clock (BUS-12)", Trust::read},
};

bool serial(BusKind kind) {
    return kind != BusKind::parallel8;
}

/// The least write cycle of a display on a bus, ns; none where its part does not say.
std::optional<double> write_cycle(const Layout& layout) {
    return serial(layout.bus.kind) ? layout.display.serial_write_ns
                                   : layout.display.parallel_write_ns;
}

void find_bus_clock(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    if (layout.bus.clock.value <= 0.0) return;
    const double cycle = 1e9 / layout.bus.clock.value;
    const std::string asked = "the bus at " + number(layout.bus.clock.value / 1e6, 2) +
                              " MHz has a cycle of " + number(cycle, 1) + " ns";
    const std::optional<double> least = write_cycle(layout);
    if (least && cycle < *least - slack) {
        add_finding(found,
                    Severity::should,
                    "/bus/clock_mhz",
                    {cycle, *least, "ns"},
                    asked + ", " + layout.display.controller + " needs " + number(*least) +
                        " ns for a write: up to " + number(1e3 / *least, 2) +
                        " MHz are in its data sheet, more may work on your bench");
    }
    const bool avr = layout.mcu.family.starts_with("avr");
    if (!avr || !serial(layout.bus.kind) || layout.clock.value <= 0.0) return;
    const Hertz fastest = fastest_serial_clock(layout.clock);
    if (layout.bus.clock.value <= fastest.value * (1.0 + slack)) return;
    add_finding(found,
                Severity::should,
                "/bus/clock_mhz",
                {cycle, 1e9 / fastest.value, "ns"},
                asked + ", " + layout.mcu.name + " at " + number(layout.clock.value / 1e6, 2) +
                    " MHz sends a bit in " + number(1e9 / fastest.value, 1) +
                    " ns at its fastest: say " + number(fastest.value / 1e6, 2) + " MHz",
                bus_clock_sources[1].text);
}

}  // namespace

const Rule bus_clock{
    .name = "bus-clock",
    .sentence = "The bus keeps to the controller's write cycle and to half the clock of an AVR.",
    .computed =
        "Period of the serial clock, or of a write strobe, against the least write cycle of the "
        "display's "
        "controller; on an AVR also against two cycles of the processor.",
    .formula = "1 / clock >= write cycle; serial on an AVR: clock <= processor clock / 2",
    .sources = bus_clock_sources,
    .figures = {},
    .find = find_bus_clock,
};

}  // namespace dialplate::rule

#include "sim/display/bus_time.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace dialplate {

namespace {

constexpr BusDriver drivers[] = {
    // Polled: the flag shows 17 cycles after the write at half the processor clock, then the poll,
    // the colour byte and the loop follow; 44 cycles a two-byte pixel, within BUS-15's 20 to 30 a
    // byte.
    {BusKind::spi, "SPI, polled", 6, false, "measured: 44 cycles a pixel in a plain C++ loop"},
    // One cycle for the single buffer to free itself, one for safety: a write at 17 is lost on
    // some parts.
    {BusKind::spi_timed, "SPI, timed", 2, true, "standards BUS-15 and section 10, item 12"},
    // Double buffered: frames follow back to back, the floor of BUS-13.
    {BusKind::usart_spi, "USART as SPI master", 0, true, "standards BUS-13"},
    // Three cycles a byte and a counting loop of four a pixel: ten a two-byte pixel. Fewer where
    // both bytes of a colour are equal, because then only the strobe moves.
    {BusKind::parallel8, "8-bit parallel", 5, false, "standards BUS-19"},
};

constexpr int bits_per_byte = 8;

}  // namespace

const BusDriver& bus_driver(BusKind kind) {
    const auto* found = std::find_if(std::begin(drivers),
                                     std::end(drivers),
                                     [kind](const BusDriver& d) { return d.kind == kind; });
    assert(found != std::end(drivers));
    return *found;
}

Hertz fastest_serial_clock(Hertz processor) {
    return Hertz{processor.value / 2.0};
}

Cycles cycles_per_byte(BusKind kind, const BusClocks& clocks) {
    assert(clocks.processor.value > 0.0 && clocks.bus.value > 0.0);
    const double ratio = clocks.processor / clocks.bus;
    // A clock typed in decimal megahertz must not cost a cycle for its last binary digit.
    const auto whole_up = [](double cycles) {
        return static_cast<std::int64_t>(std::ceil(cycles - 1e-6));
    };
    const std::int64_t own = bus_driver(kind).own_cycles;
    if (kind == BusKind::parallel8) return Cycles{std::max(own, whole_up(ratio))};
    return Cycles{whole_up(bits_per_byte * ratio) + own};
}

Bytes rectangle_bytes(const SentRectangle& sent) {
    return window_bytes +
           Bytes{static_cast<std::int64_t>(sent.width) * sent.height * sent.bytes_per_pixel};
}

int bytes_per_pixel(const Display& display, BusKind kind) {
    return kind == BusKind::parallel8 ? 2 : display.bytes_per_pixel;
}

Cycles bus_cycles(Bytes bytes, BusKind kind, const BusClocks& clocks) {
    return cycles_per_byte(kind, clocks) * bytes.value;
}

Milliseconds time_of(Cycles cycles, Hertz processor) {
    return Milliseconds{static_cast<double>(cycles.value) * 1000.0 / processor.value};
}

Milliseconds controller_floor(Bytes bytes, BusKind kind, double write_ns) {
    const double writes =
        static_cast<double>(bytes.value) * (kind == BusKind::parallel8 ? 1.0 : bits_per_byte);
    return Milliseconds{writes * write_ns * 1e-6};
}

}  // namespace dialplate

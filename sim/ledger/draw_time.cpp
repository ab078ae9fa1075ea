#include "sim/ledger/draw_time.hpp"

#include "sim/display/bus_time.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace dialplate {
namespace {

/// Cycles that a driver takes beside the bytes on the bus, on an AVR.
/// Source: a drawing engine of this kind on a simulated ATmega328P. Window: a rectangle of one pixel
/// took 567 to 598 cycles over SPI, 670 to 675 over the USART, 13 bytes of it on the bus. Pixel: nine
/// glyphs of 12 x 16 in runs took 51 to 53 (SPI polled), 45.1 (timed), 43.3 (USART) cycles a pixel all
/// in all. Parallel was not among them and is taken as SPI.
/// UNVERIFIED: fills need less than glyphs; running the emitted code tells them apart.
struct BesideTheBus {
    BusKind kind;
    int window;
    int pixel;
};
constexpr BesideTheBus measured_elsewhere[] = {
    {BusKind::spi, 297, 5},
    {BusKind::spi_timed, 348, 6},
    {BusKind::usart_spi, 465, 8},
    {BusKind::parallel8, 297, 5},
};

/// The same work in cycles of other families, which do 16- and 32-bit sums in one instruction.
/// UNVERIFIED: a guess from instruction counts; timing such a part would settle it.
double family_factor(const Mcu& mcu) {
    return mcu.family.rfind("avr", 0) == 0 ? 1.0 : 0.5;
}

const BesideTheBus& beside(BusKind kind) {
    return *std::find_if(std::begin(measured_elsewhere),
                         std::end(measured_elsewhere),
                         [kind](const BesideTheBus& b) { return b.kind == kind; });
}

/// What the bus itself allows, whoever feeds it: bits at its clock, or strobes.
Milliseconds bus_limit(Bytes bytes, const Bus& bus) {
    const double moves =
        static_cast<double>(bytes.value) * (bus.kind == BusKind::parallel8 ? 1.0 : 8.0);
    return Milliseconds{1000.0 * moves / bus.clock.value};
}

Cycles cycles_for(const BusCounters& sent, const Layout& layout) {
    const BesideTheBus& more = beside(layout.bus.kind);
    const Cycles bus = bus_cycles(
        Bytes{sent.bytes}, layout.bus.kind, {.processor = layout.clock, .bus = layout.bus.clock});
    const auto own = static_cast<double>(sent.windows * more.window + sent.pixels * more.pixel);
    return bus + Cycles{std::llround(own * family_factor(layout.mcu))};
}

}  // namespace

EventTime timed(const Happening& happening, const Layout& layout) {
    EventTime event;
    event.kind = happening.kind;
    event.page = happening.page;
    event.event = happening.event;
    event.what = happening.what;
    event.bus_bytes = Bytes{happening.sent.bytes};
    event.pixels = happening.sent.pixels;
    event.windows = happening.sent.windows;
    event.cycles = cycles_for(happening.sent, layout);
    event.time = time_of(event.cycles, layout.clock);
    event.share_of_limit = event.time.value > 0.0
                               ? std::min(1.0, bus_limit(event.bus_bytes, layout.bus) / event.time)
                               : 0.0;
    // The longest slice is one window and its pixels.
    BusCounters slice;
    slice.windows = 1;
    slice.pixels = happening.longest_slice_pixels;
    slice.bytes =
        window_bytes.value + slice.pixels * bytes_per_pixel(layout.display, layout.bus.kind);
    event.longest_slice = time_of(cycles_for(slice, layout), layout.clock);
    event.standing = Standing::estimate;
    event.basis =
        std::string{"bytes are exact; "} + bus_driver(layout.bus.kind).name + " at " +
        std::to_string(
            cycles_per_byte(layout.bus.kind, {.processor = layout.clock, .bus = layout.bus.clock})
                .value) +
        " cycles a byte, and for window and decoder what a like engine took on a simulated "
        "ATmega328P";
    return event;
}

}  // namespace dialplate

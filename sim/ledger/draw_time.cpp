#include "sim/ledger/draw_time.hpp"

#include "sim/display/bus_time.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "sim/ledger/measured_times.hpp"
#include "sim/ledger/measured_work.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstdio>
#include <iterator>
#include <string>

namespace dialplate {
namespace {

/// Of a Cortex-M, where loads, stores and taken branches take two cycles and more, most else one; without what
/// it waits for its flash. UNVERIFIED: a guess; timing such a part would settle it.
constexpr double cycles_per_instruction = 1.5;

/// The engine's own work on another family, whose time nothing here simulates.
struct OtherFamily {
    double factor = 1.0;  ///< Its cycles for one of the ATmega328P.
    std::string basis;    ///< The rest of a sentence; empty: that very family.
};

OtherFamily other_family(const Mcu& mcu) {
    if (mcu.family == "avr") {
        return {};
    }
    if (mcu.family == "avr-mapped") {
        return {1.0,
                "; not timed on this family: taken to be the same, some instructions are faster"};
    }
    const auto* work = std::find_if(std::begin(measured::family_work),
                                    std::end(measured::family_work),
                                    [&mcu](const auto& w) { return mcu.family == w.family; });
    if (work == std::end(measured::family_work)) {
        return {0.5, "; halved for this family, a guess"};
    }
    char text[250];
    std::snprintf(
        text,
        sizeof text,
        "; not timed on this family: %.2f instructions (%.2f to %.2f over %d layouts, counted "
        "by qemu) for each of those cycles, and %.1f cycles an instruction, a guess",
        work->instructions,
        work->least,
        work->greatest,
        measured::work_layouts,
        cycles_per_instruction);
    return {work->instructions * cycles_per_instruction, text};
}

/// The part whose parallel bus has a port of its own; the smaller one shares two ports.
bool has_whole_port(const Mcu& mcu) {
    return mcu.name == measured::large_part;
}

const measured::DriverTime& driver_time_of(const Layout& layout) {
    const int pixel = bytes_per_pixel(layout.display, layout.bus.kind);
    const bool whole_port = layout.bus.kind == BusKind::parallel8 && has_whole_port(layout.mcu);
    const auto* found = std::find_if(std::begin(measured::driver_time),
                                     std::end(measured::driver_time),
                                     [&](const measured::DriverTime& d) {
                                         return d.kind == layout.bus.kind &&
                                                d.bytes_per_pixel == pixel &&
                                                d.whole_port == whole_port;
                                     });
    assert(found != std::end(measured::driver_time));
    return *found;
}

/// What the bus itself allows, whoever feeds it: bits at its clock, or strobes.
Milliseconds bus_limit(Bytes bytes, const Bus& bus) {
    const double moves =
        static_cast<double>(bytes.value) * (bus.kind == BusKind::parallel8 ? 1.0 : 8.0);
    return Milliseconds{1000.0 * moves / bus.clock.value};
}

std::string basis_of(const Layout& layout) {
    const measured::DriverTime& driver = driver_time_of(layout);
    const Cycles byte =
        cycles_per_byte(layout.bus.kind, {.processor = layout.clock, .bus = layout.bus.clock});
    char text[400];
    std::snprintf(
        text,
        sizeof text,
        "bytes exact; %s, %d cycles each; the engine's own time by its steps, weighed on a "
        "simulated ATmega328P: of %d updates of layouts that it was not fitted to, half within "
        "%.1f %%, nine of ten within %.1f %%, all within %.1f %%",
        bus_driver(layout.bus.kind).name,
        static_cast<int>(byte.value),
        driver.updates,
        100.0 * driver.median_error,
        100.0 * driver.nine_of_ten_error,
        100.0 * driver.worst_error);
    return text + other_family(layout.mcu).basis;
}

}  // namespace

ServiceTime::ServiceTime(const Layout& layout, PartSet parts)
    : layout_(layout),
      // What other families' factors are multiples of draws as they do, each row decided and then pushed.
      engine_(
          layout.mcu.family.starts_with("avr")
              ? engine_on(parts, layout.bus.kind, bytes_per_pixel(layout.display, layout.bus.kind))
              : DrawingEngine{.parts = parts}),
      factor_(other_family(layout.mcu).factor) {
    if (has_whole_port(layout.mcu)) factor_ *= measured::large_part_factor;
}

double ServiceTime::cycles(const EngineWork& work) const {
    const DrawTerms terms = draw_terms(work, engine_);
    const measured::DriverTime& driver = driver_time_of(layout_);
    double engine = 0.0;
    for (const measured::EngineTerm& term : measured::engine_work) {
        engine += terms[static_cast<std::size_t>(term.term)] * term.cycles;
    }
    const DriverTerms of_driver = driver_terms(work, engine_);
    const double pixels = of_driver.pixels * driver.pixel +
                          of_driver.even_pixels * driver.even_pixel +
                          of_driver.decided_pixels * driver.decided_pixel;
    const double beside = of_driver.windows * driver.window + of_driver.pushes * driver.push +
                          of_driver.empty_pushes * driver.empty_push +
                          of_driver.even_pushes * driver.even_push;
    // Measured with the bus at half the clock; what a slower one adds, it adds to each byte.
    const auto byte = [&](const BusClocks& clocks) {
        return static_cast<double>(cycles_per_byte(layout_.bus.kind, clocks).value);
    };
    const double bytes = static_cast<double>(window_bytes.value) * of_driver.windows +
                         of_driver.pixels * driver.bytes_per_pixel;
    const double as_measured = layout_.bus.kind == BusKind::parallel8
                                   ? driver.pixel / driver.bytes_per_pixel
                                   : byte({.processor = Hertz{2.0}, .bus = Hertz{1.0}});
    const double slower =
        byte({.processor = layout_.clock, .bus = layout_.bus.clock}) - as_measured;
    // The bytes of windows are the bus's; what is left of the engine's time goes with the family.
    const double windows = static_cast<double>(window_bytes.value) * of_driver.windows *
                           byte({.processor = Hertz{2.0}, .bus = Hertz{1.0}});
    const double own = std::max(0.0, engine + beside - windows);
    return pixels + windows + bytes * std::max(0.0, slower) + own * factor_;
}

EventTime timed(const Happening& happening, const Layout& layout, PartSet parts) {
    const ServiceTime time(layout, parts);
    EventTime event;
    event.kind = happening.kind;
    event.page = happening.page;
    event.event = happening.event;
    event.what = happening.what;
    const Update& update = happening.update;
    event.bus_bytes = Bytes{update.sent.bytes};
    event.pixels = update.sent.pixels;
    event.windows = update.sent.windows;
    event.cycles = Cycles{std::llround(time.cycles(update.work))};
    event.time = time_of(event.cycles, layout.clock);
    event.share_of_limit = event.time.value > 0.0
                               ? std::min(1.0, bus_limit(event.bus_bytes, layout.bus) / event.time)
                               : 0.0;
    event.longest_slice =
        time_of(Cycles{std::llround(time.cycles(happening.longest))}, layout.clock);
    event.standing = Standing::estimate;
    event.basis = basis_of(layout);
    return event;
}

}  // namespace dialplate

#include "sim/ledger/draw_time.hpp"

#include "sim/display/bus_time.hpp"
#include "sim/ledger/draw_terms.hpp"
#include "sim/ledger/measured_times.hpp"
#include "sim/ledger/measured_work.hpp"

#include <algorithm>
#include <array>
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

const measured::Drawing& drawing_of(BusKind kind) {
    return *std::find_if(std::begin(measured::drawing),
                         std::end(measured::drawing),
                         [kind](const measured::Drawing& d) { return d.kind == kind; });
}

/// What the bus itself allows, whoever feeds it: bits at its clock, or strobes.
Milliseconds bus_limit(Bytes bytes, const Bus& bus) {
    const double moves =
        static_cast<double>(bytes.value) * (bus.kind == BusKind::parallel8 ? 1.0 : 8.0);
    return Milliseconds{1000.0 * moves / bus.clock.value};
}

Cycles cycles_for(const Update& update, const Layout& layout) {
    const Cycles bus = bus_cycles(Bytes{update.sent.bytes},
                                  layout.bus.kind,
                                  {.processor = layout.clock, .bus = layout.bus.clock});
    const std::array<double, draw_term_count> terms = draw_terms(update);
    const measured::Drawing& weights = drawing_of(layout.bus.kind);
    double own = 0.0;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        own += terms[i] * weights.terms[i];
    }
    // Never less than the bytes alone: the bus is a floor.
    return bus + Cycles{std::llround(std::max(0.0, own) * other_family(layout.mcu).factor)};
}

/// The part of an update that its longest slice is, by pixels and by windows.
double longest_share(const Update& update) {
    if (update.sent.pixels == 0 || update.slices <= 1) {
        return 1.0;
    }
    const double by_pixels =
        static_cast<double>(update.longest_slice_pixels) / static_cast<double>(update.sent.pixels);
    return std::min(1.0, std::max(by_pixels, 1.0 / update.slices));
}

std::string basis_of(const Layout& layout) {
    const measured::Drawing& weights = drawing_of(layout.bus.kind);
    const Cycles byte =
        cycles_per_byte(layout.bus.kind, {.processor = layout.clock, .bus = layout.bus.clock});
    char text[300];
    std::snprintf(
        text,
        sizeof text,
        "bytes exact; %s, %d cycles each; the engine's own time fitted to %d updates on a "
        "simulated ATmega328P, half of them within %.0f %%, all within %.0f %%",
        bus_driver(layout.bus.kind).name,
        static_cast<int>(byte.value),
        weights.updates,
        std::ceil(100.0 * weights.median_error),
        std::ceil(100.0 * weights.worst_error));
    return text + other_family(layout.mcu).basis;
}

}  // namespace

EventTime timed(const Happening& happening, const Layout& layout) {
    EventTime event;
    event.kind = happening.kind;
    event.page = happening.page;
    event.event = happening.event;
    event.what = happening.what;
    const Update& update = happening.update;
    event.bus_bytes = Bytes{update.sent.bytes};
    event.pixels = update.sent.pixels;
    event.windows = update.sent.windows;
    event.cycles = cycles_for(update, layout);
    event.time = time_of(event.cycles, layout.clock);
    event.share_of_limit = event.time.value > 0.0
                               ? std::min(1.0, bus_limit(event.bus_bytes, layout.bus) / event.time)
                               : 0.0;
    event.longest_slice = Milliseconds{event.time.value * longest_share(update)};
    event.standing = Standing::estimate;
    event.basis = basis_of(layout);
    return event;
}

}  // namespace dialplate

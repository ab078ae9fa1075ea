// The terms of which the time of a call of the engine's service function is the weighted sum, beside its pixels.
//
// What a term weighs was fitted to firmware run on a simulated chip (tests/firmware/measure_times.cpp,
// measured_times.hpp).
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/prototype/engine_work.hpp"
#include "sim/prototype/parts_used.hpp"

#include <array>
#include <string>

namespace dialplate {

/// The kinds of work, each as far as an engine with certain parts does it, and then those that such parts make
/// slower, and at last the decisions in context of a driver that sends them at once.
inline constexpr int slowed_terms = 23;
inline constexpr int sent_at_once = work::kinds + slowed_terms;
inline constexpr int draw_term_count = sent_at_once + work::context_fields;
using DrawTerms = std::array<double, draw_term_count>;

/// The engine on the receiver; the work was counted with one that has all parts.
struct DrawingEngine {
    PartSet parts;
    /// Whether the driver decides glyphs in `context` itself while it sends them, unless they are enlarged.
    bool sends_contexts = false;
    /// Whether it sends rows of segments and of what differs by their edges, without pushes.
    bool sends_rows = false;
};
/// The driver of ui/mcu for such a bus.
DrawingEngine engine_on(PartSet parts, BusKind bus, int bytes_per_pixel);

DrawTerms draw_terms(const EngineWork& work, const DrawingEngine& engine);

/// For tables.
std::string name_of_term(int term);

/// What the driver of the bus makes of the same work.
struct DriverTerms {
    double windows = 0, pushes = 0, empty_pushes = 0, pixels = 0, even_pixels = 0, even_pushes = 0;
    double decided_pixels = 0;  ///< Of the pixels, those that it decides itself.
};
DriverTerms driver_terms(const EngineWork& work, const DrawingEngine& engine);

}  // namespace dialplate

// The terms of which the time of a call of the engine's service function is the weighted sum, beside its pixels.
//
// What a term weighs was fitted to firmware run on a simulated chip (tests/firmware/measure_times.cpp,
// measured_times.hpp).
#pragma once

#include "sim/prototype/engine_work.hpp"
#include "sim/prototype/parts_used.hpp"

#include <array>
#include <string>

namespace dialplate {

/// The kinds of work, each as far as an engine with certain parts does it, and then those that such parts make
/// slower.
inline constexpr int slowed_terms = 14;
inline constexpr int draw_term_count = work::kinds + slowed_terms;
using DrawTerms = std::array<double, draw_term_count>;

/// @param parts  Of the engine on the receiver; the work was counted with an engine that has all parts.
DrawTerms draw_terms(const EngineWork& work, PartSet parts);

/// For tables.
std::string name_of_term(int term);

/// What the driver of the bus makes of the same work.
struct DriverTerms {
    double windows = 0, pushes = 0, empty_pushes = 0, pixels = 0, even_pixels = 0, even_pushes = 0;
};
DriverTerms driver_terms(const EngineWork& work);

}  // namespace dialplate

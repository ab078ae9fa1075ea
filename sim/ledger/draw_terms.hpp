// The terms of which the time of an update beside its bytes on the bus is the weighted sum.
//
// What a term weighs was fitted to firmware run on a simulated chip (tests/firmware/measure_times.cpp,
// measured_times.hpp).
#pragma once

#include "sim/prototype/prototype.hpp"

#include <array>
#include <cstdint>

namespace dialplate {

inline constexpr std::size_t draw_term_count = 8;
std::array<double, draw_term_count> draw_terms(const Update& update);

}  // namespace dialplate

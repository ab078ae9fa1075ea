// The terms of which the time of an update beside its bytes on the bus is the weighted sum.
//
// What a term weighs was fitted to firmware run on a simulated chip (tests/firmware/measure_times.cpp,
// measured_times.hpp).
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/prototype/prototype.hpp"

#include <array>
#include <cstdint>

namespace dialplate {

/// What an update did, in amounts that cost time.
struct DrawnAmount {
    std::int64_t pixels = 0;
    std::int64_t windows = 0;
    std::int64_t rows = 0;   ///< Runs that are a whole row of their window.
    std::int64_t parts = 0;  ///< Runs that are a part of one.
    std::int64_t part_pixels = 0;
    std::int64_t slices = 0;
    std::int64_t items = 0;  ///< On the page: each is looked at for changes.
};

DrawnAmount amount_of(const Update& update, const Page& page);

inline constexpr std::size_t draw_term_count = 7;
std::array<double, draw_term_count> draw_terms(const DrawnAmount& amount);

}  // namespace dialplate

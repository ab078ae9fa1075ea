// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain =
    "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues for the ATmega328P";

/// Programs compiled for the fit, and others to judge it by.
inline constexpr int samples = 1200;
inline constexpr int held_out = 200;
/// Greatest, nine-of-ten and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.0106066;
inline constexpr double nine_of_ten_error = 0.00554253;
inline constexpr double median_error = 0.0022846;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double flash_terms[] = {
    2966, 103, 443, 319, 412, 219, 449, 223, 643, 63, 154, 55,
    206, 108, 808, -12, 44, 175, 274, 73, 882, 44, 161, 222,
    191, 776, 17, 16, 4, 126, 160, 182, 184, 171, 29, 31,
    15, 78, 331, 19, 279, 231, -37, 171, 30, 27, 17, 61,
    139, 239, 193, 243, 14, 5, 25, 75, 33, 33, 41, -19,
    83, 11, 123, 67, 75, 537, -35, 190, 27, -16, -37, 127,
    79, -46, 21, -67, 28, 24, 954, 487, 176, 27, 50, 63,
    579, 75, 449, 28, 80, 82, 45, 22, 351, 348, 439, 199,
    31, 11, -53, 203, 456, 41, 429, 24, -27, -51, 63, -33,
    44, -17, 5, 49, 252, 86, 308, 103, 359, 95, 379, 0,
    669,
};
// clang-format on

/// RAM of the engine without segments, without its arena; what segments and reading the touch sheet add.
inline constexpr int engine_state = 85, segment_state = 10, touch_state = 2;
/// Stack from the service function on: bytes for each of stack_term.
// clang-format off
inline constexpr double stack_terms[] = {
    153, -32, -11, 24, -29, -25, 73, 77, 22, 21, -11, 12,
    39, 45, 89, -16, 10, 3, 23, 22, 73, 19, 17, 9,
    5, 7, 1, 32, 22, -4, -7, -4, 12,
};
// clang-format on
/// Errors of a predicted stack among the programs held out, in bytes; and by how much it was too low at most.
inline constexpr double stack_median_error = 3, stack_nine_of_ten_error = 13,
                        stack_worst_error = 25;
inline constexpr double stack_margin = 23;
/// Of the engine with all parts.
inline constexpr int stack = 396;

/// What the whole engine grows by on a part with more than 128 KiB; and by how many bytes its stack, since return addresses are longer there.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr int large_avr_stack = 9;
inline constexpr double large_avr_factor = 1.00072;

}  // namespace dialplate::measured

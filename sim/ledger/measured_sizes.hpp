// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain =
    "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues for the ATmega328P";

/// Programs compiled for the fit, and others to judge it by.
inline constexpr int samples = 600;
inline constexpr int held_out = 100;
/// Greatest, nine-of-ten and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.0207281;
inline constexpr double nine_of_ten_error = 0.0118147;
inline constexpr double median_error = 0.00416952;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double flash_terms[] = {
    2937, 1099, 938, 930, 1364, 506, 1950, 1598, 1014, -10, 605, 52,
    211, 116, 810, 11, 39, 216, 281, 71, 1411, 1890, 823, 89,
    253, 862, 200, -5, -9, -6, -6, -1095, -1101, -1118, 1106, 650,
    -196, 196, 100, 71, -8, 87, -13, -20, 10, 5, -193, 608,
    34, 16, -193, -45, 24, 221, 131, -707, 214, 245, -40, 696,
    46, 43, -19, -97, -40, 34, -30, -12, 1, 10, 46, -13,
    -13, 15, -3, -38, -14, -52, 35, -6, 199, 88, 263, 88,
    320, 90, 360, 0, -485, 546, 10, 139, -49, 74, 722, -18,
};
// clang-format on

/// RAM of the engine without segments, without its arena; what segments and reading the touch sheet add.
inline constexpr int engine_state = 85, segment_state = 10, touch_state = 2;
/// Stack from the service function on: bytes for each of stack_term.
// clang-format off
inline constexpr double stack_terms[] = {
    187, -34, 2, 20, -20, -31, 63, 47, -13, -11, -39, -21,
    11, 15, 90, -27, 9, 3, 25, 24, 61, 19, 20, 9,
    4, 7, 10, 0, 32, -6, -6, -11, 3,
};
// clang-format on
/// Errors of a predicted stack among the programs held out, in bytes; and by how much it was too low at most.
inline constexpr double stack_median_error = 1, stack_nine_of_ten_error = 6, stack_worst_error = 23;
inline constexpr double stack_margin = 23;
/// Of the engine with all parts.
inline constexpr int stack = 398;

/// What the whole engine grows by on a part with more than 128 KiB; and by how many bytes its stack, since return addresses are longer there.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr int large_avr_stack = 8;
inline constexpr double large_avr_factor = 1.00071;

}  // namespace dialplate::measured

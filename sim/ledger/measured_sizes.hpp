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

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 95;
/// Longest path of calls below main: bytes for each of size_terms(), and by how much they were too few at most for a program held out.
// clang-format off
inline constexpr double stack_terms[] = {
    134, 8, 30, -35, -5, 9, 87, 66, 8, 15, -1, -8,
    1, -9, 14, 1, -4, -1, -1, 8, 14, 91, 46, 8,
    29, 37, 33, 13, 6, 10, 3, -34, -61, -77, 36, 35,
    -20, -23, -2, 21, 5, -7, -3, 5, 2, 1, -22, 7,
    -12, 5, -20, 4, -24, 33, 24, -27, 10, 23, -3, -3,
    1, -20, 13, -5, 2, -3, 3, 19, -5, -10, -11, 13,
    4, 3, 11, 8, -2, 3, -7, -5, 4, 1, 0, 2,
    4, -2, -2, 0, -9, 9, 7, 19, -3, -14, -3, 7,
};
// clang-format on
inline constexpr double stack_margin = 50;
/// The same of the engine with all parts, return addresses included.
inline constexpr int stack = 414;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00071;

}  // namespace dialplate::measured

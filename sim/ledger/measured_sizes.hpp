// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain =
    "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues for the ATmega328P";

/// Programs compiled for the fit, and others to judge it by.
inline constexpr int samples = 220;
inline constexpr int held_out = 40;
/// Greatest, nine-of-ten and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.113536;
inline constexpr double nine_of_ten_error = 0.0143944;
inline constexpr double median_error = 0.00413282;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double flash_terms[] = {
    2907, 979, 962, 878, 1285, 537, 944, 609, 995, -73, 631, 80,
    201, 113, 755, -8, 10, 227, 298, 59, 1397, 989, 936, 532,
    674, 993, 235, 3, -4, -13, -16, -48, -97, -148, 873, 737,
    -229, 210, 79, 265, -31, 160, -26, 5, -20, 6, -588, 588,
    -201, 23, -275, -89, -123, -33, 206, -537, 83, 59, -54, 676,
    44, 48, -5, -51, -46, 33, 7, -15, 25, -31, -15, 5,
    6, -6, -15, -36, 25, -75, 66, -1, 175, 83, 208, 95,
    286, 84, 342, 0, 423, 15, -12, 775, -22,
};
// clang-format on

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main: bytes for each of size_terms(), and by how much they were too few at most for a program held out.
// clang-format off
inline constexpr double stack_terms[] = {
    127, 13, 30, -29, 0, 6, 30, 16, 12, 29, -1, -7,
    -3, -1, 7, 4, -5, -4, -2, 4, 17, 49, 24, 4,
    38, 42, 41, 7, -1, 3, -3, 31, -6, -27, 40, 43,
    -5, -19, -3, 21, 11, -38, 10, 3, 11, -0, -24, -11,
    -26, 8, -13, -12, -3, -7, 24, 6, 29, 12, -5, 4,
    -7, -27, 20, -12, 8, -7, 6, 22, -4, -9, -14, 7,
    1, 7, 8, -2, -1, 1, -4, -2, -7, -0, -9, -1,
    -5, -4, -15, 0, 2, 6, 3, 10, 9,
};
// clang-format on
inline constexpr double stack_margin = 48;
/// The same of the engine with all parts, return addresses included.
inline constexpr int stack = 402;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00082;

}  // namespace dialplate::measured

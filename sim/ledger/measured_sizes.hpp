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
inline constexpr double worst_error = 0.0198942;
inline constexpr double nine_of_ten_error = 0.0119755;
inline constexpr double median_error = 0.00394238;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double flash_terms[] = {
    2930, 1021, 941, 921, 1331, 504, 1952, 1613, 941, -1, 618, 49,
    208, 111, 788, 15, 33, 224, 278, 73, 1400, 1888, 821, 95,
    256, 840, 211, -1, -1, -5, 0, -1084, -1104, -1121, 1034, 653,
    -151, 198, 59, 282, -5, 77, -16, -22, 13, 6, -197, 596,
    19, 12, -192, -47, 23, 217, 142, -703, 221, 248, -40, 690,
    50, 40, -28, -77, -35, 37, -19, -14, 1, 6, 46, -15,
    -4, 11, -2, -33, -5, -56, 33, -4, 200, 81, 232, 92,
    320, 89, 358, 0, -485, 537, 11, 139, -52, 79, 716, -17,
};
// clang-format on

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main: bytes for each of size_terms(), and by how much they were too few at most for a program held out.
// clang-format off
inline constexpr double stack_terms[] = {
    129, 14, 27, -36, -7, 9, 92, 71, 7, 15, 4, -7,
    0, -9, 14, 1, -4, -1, -1, 7, 11, 97, 47, 8,
    30, 41, 34, 14, 6, 10, 4, -35, -66, -83, 37, 40,
    -17, -24, -0, 19, 3, -9, -2, 5, 4, 1, -23, 6,
    -13, 6, -21, 4, -25, 33, 25, -25, 11, 21, -3, -3,
    0, -27, 13, -6, 0, -3, 2, 20, -1, -9, -9, 13,
    3, 3, 10, 9, -1, 3, -6, -5, 4, -0, 2, 2,
    5, -3, -3, 0, -10, 9, 8, 16, -4, -13, -3, 8,
};
// clang-format on
inline constexpr double stack_margin = 52;
/// The same of the engine with all parts, return addresses included.
inline constexpr int stack = 416;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00071;

}  // namespace dialplate::measured

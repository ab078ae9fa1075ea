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
inline constexpr double worst_error = 0.0271501;
inline constexpr double nine_of_ten_error = 0.0129414;
inline constexpr double median_error = 0.0046729;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double flash_terms[] = {
    2874, 1124, 1036, 998, 1403, 515, 1868, 1481, 1014, 39, 611, 58,
    205, 98, 853, -33, 14, 218, 270, 48, 1386, 1803, 808, 198,
    299, 894, 144, -31, -11, 5, -7, -980, -1015, -1022, 1056, 718,
    -216, 195, 97, 80, -3, 82, -30, 9, -60, -0, -252, 554,
    -89, -21, -160, -91, 14, 162, 207, -650, 203, 228, -46, 696,
    21, 25, -13, -80, -54, -1, -45, -76, -21, 21, 3, -30,
    -0, -2, -3, -21, 37, -27, 50, 5, 278, 118, 319, 95,
    390, 111, 381, 0, -491, 457, -51, 237, -23, 75, 671, 33,
};
// clang-format on

/// RAM of the engine without segments, without its arena; what segments and reading the touch sheet add.
inline constexpr int engine_state = 85, segment_state = 10, touch_state = 2;
/// Stack from the service function on: bytes for each of stack_term.
// clang-format off
inline constexpr double stack_terms[] = {
    189, -28, -7, 26, -22, -26, 58, 40, -16, -18, -45, -19,
    8, 8, 86, -28, 8, 3, 22, 24, 68, 19, 19, 8,
    4, 7, 8, 0, 22, -6, -6, -8, 6,
};
// clang-format on
/// Errors of a predicted stack among the programs held out, in bytes; and by how much it was too low at most.
inline constexpr double stack_median_error = 2, stack_nine_of_ten_error = 6, stack_worst_error = 22;
inline constexpr double stack_margin = 22;
/// Of the engine with all parts.
inline constexpr int stack = 396;

/// What the whole engine grows by on a part with more than 128 KiB; and by how many bytes its stack, since return addresses are longer there.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr int large_avr_stack = 9;
inline constexpr double large_avr_factor = 1.00071;

}  // namespace dialplate::measured

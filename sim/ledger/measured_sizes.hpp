// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain =
    "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues for the ATmega328P";

/// Engines compiled for the fit, and others to judge it by.
inline constexpr int samples = 520;
inline constexpr int held_out = 60;
/// Greatest, nine-of-ten and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.0199662;
inline constexpr double nine_of_ten_error = 0.008;
inline constexpr double median_error = 0.00397196;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double engine_terms[] = {
    2897, 532, 462, 426, 889, 198, 648, 704, 899, 65, 657, 77,
    245, 119, 840, 52, 68, 290, 295, 87, 1461, 849, 751, 308,
    128, -1, -40, 260, 66, -9, -6, -5, 12, -0, 23, 21,
    108, 156, 216, 10, 8, 100, 116, 163, 23, 5, -11, -5,
    10, -42, 41, -13, 4, 2, 1, 60, -5, 6, -1, -2,
    -3, -2, 2, 3, -2, -10, -2, -9, 1, 4, -42, 8,
    2, 1, 60, 4, 3, -1, -2, -4, -9, -5, -6, -11,
    -8, -9, -8, 3, 0, -2, 18, -1, 61, 8, 14, 3,
    1, -7, -6, -8, -5, 5, 10, -2, -8, -8, -6, -10,
    4, 64, 2, 8, -2, -3, -34, 7, 2, 3, 3, 5,
    -3, -4, 3, -7, -9, 5, 4, -3, -3, -3, 20, 3,
    21, 11, 19, 6, 6, -3, 16, 8, 18, -5, -54, -114,
    -4, 3, -0, -3, 0, -10, -1, -5, 3, -4, 5, -11,
    30, -13, -8, -14, 0, -18, 1, -2, -9, 6, -3, 2,
    1, -4, -17, -3, -3, 2, -14, -9, -3, -6, -4, -6,
    -2, -5, -7, 12, -12, 4, 1, 1, -12, -2, -10, -7,
    -2, 3, 7, 2, -4, 5, -12, -11, -5, 4, 4, -9,
    -6, -24, -7, 2, -0, -5, 4, 7, -5, -0, -7, -13,
    -11, -2, -13, -10, -7, -2, -5, -0, 11, -1, -9, 5,
    -40, -8, -4, 6, -3, -4, -14, -15, -32, 2, -5, -0,
    -8, -6, -7, -6, 1, 1, 2, 9, 3, -5, 0, -1,
    -5, -2, -6, -11, -3, -2, -3, -6, 15, -13,
};
// clang-format on

struct Driver {
    BusKind kind;
    int bytes_per_pixel;
    int bytes;
    int with_contexts;  ///< If glyphs in `context` are drawn: some links do it themselves.
};
inline constexpr Driver drivers[] = {
    {BusKind::spi, 2, 238, 244},
    {BusKind::spi, 3, 322, 328},
    {BusKind::spi_timed, 2, 254, 646},
    {BusKind::spi_timed, 3, 346, 352},
    {BusKind::usart_spi, 2, 342, 348},
    {BusKind::usart_spi, 3, 432, 440},
    {BusKind::parallel8, 2, 362, 368},
};

/// Reading the touch sheet with its calibration, in place of a finger from two registers: the median of some engines.
inline constexpr int touch_reading = 682;

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main: bytes for each of size_terms(), and by how much they were too few at most for an engine held out.
// clang-format off
inline constexpr double stack_terms[] = {
    152, 14, 33, -10, -8, 21, 24, 10, 6, -2, 13, 6,
    -0, -4, 19, 1, -2, 4, 1, -2, 46, 74, 25, 5,
    1, 16, 6, 5, -7, 42, -1, 1, 1, 1, -6, 1,
    2, 4, -17, 4, 3, 1, 1, 3, -5, 1, 0, 0,
    -3, -2, -2, 4, -1, 0, 0, -2, 0, 3, -0, -0,
    -0, -0, 1, 1, -1, -2, -0, -1, -1, 1, -7, 1,
    0, -0, 2, -1, -1, -0, -0, -7, -1, -0, -0, -0,
    -0, -0, -1, -1, 0, -9, 2, -0, 1, -2, 4, -4,
    -1, -1, 1, -2, 2, 0, 3, 1, -0, -0, -0, 2,
    -0, 1, 1, 1, 0, 0, -3, -0, -2, -1, 4, -1,
    1, -2, 2, -1, -0, -1, 0, -0, 1, -0, -0, -0,
    -1, -0, -2, 1, 1, -0, -2, -0, 3, -60, -16, -0,
    -0, 2, -3, 2, 3, -2, -1, 4, 2, 1, 1, -2,
    2, -2, -0, 2, -3, 2, 3, 2, 0, 3, 0, -0,
    -1, -1, 4, -0, -1, 1, -2, -5, 1, 1, 1, 1,
    -2, 0, -0, 8, -1, 0, -0, 1, 0, 0, -0, -1,
    -1, -0, -3, -0, -0, 1, -1, -2, 1, 1, 3, -3,
    1, -7, 1, -2, -3, -1, 2, 2, -2, 1, -2, -1,
    0, -1, -1, -0, -1, -1, 2, -2, 1, 0, -0, 1,
    -0, 0, 3, -3, 0, 1, -0, -0, -2, -2, 1, -5,
    -1, -0, 2, 0, 0, 0, -1, -0, -0, 2, -4, -1,
    -0, -0, -1, -3, 0, 1, 1, 3, -1, 0,
};
// clang-format on
inline constexpr double stack_margin = 38;
/// What comes on top where the bus sends glyphs in `context` by itself.
inline constexpr int stack_of_contexts = 9;
/// The same of the engine with all parts, return addresses included.
inline constexpr int stack = 369;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00149;

}  // namespace dialplate::measured

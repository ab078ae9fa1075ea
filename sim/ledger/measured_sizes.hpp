// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain =
    "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues for the ATmega328P";

/// Engines compiled for the fit, and others to judge it by.
inline constexpr int samples = 600;
inline constexpr int held_out = 60;
/// Greatest, nine-of-ten and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.057563;
inline constexpr double nine_of_ten_error = 0.0253462;
inline constexpr double median_error = 0.00531609;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double engine_terms[] = {
    2392, 396, 372, 300, 855, 165, 1026, 679, 1055, 45, 723, 156,
    257, 172, 869, 57, 141, 356, 385, 177, 1508, 1040, 722, 179,
    296, 514, 1011, 397, 182, -107, -57, -60, 627, 19, 6, 23,
    31, 34, 26, 34, 130, 198, 210, 53, 11, 114, 138, 254,
    29, 21, -38, -21, 2, -26, 23, -36, -227, -19, 357, 356,
    495, 1411, 0, -1, -3, 109, 18, 48, -5, -6, -9, -4,
    -6, -16, -14, 6, 5, -39, -18, -6, -29, 7, 4, 3,
    24, -18, 3, 0, 94, 16, 27, -2, -3, -6, -20, -11,
    -12, -23, -16, -19, -34, -20, -18, -6, -16, 10, -4, 7,
    -16, -3, 90, -3, 12, 27, 10, -4, -16, 8, -17, 1,
    -24, -1, -15, -15, -11, -42, -6, 12, -11, -34, -11, 85,
    -24, -2, -3, -6, -35, -20, 1, -15, -3, 15, -4, 7,
    14, -18, -17, -21, -22, 49, 54, 9, -8, 7, -5, -5,
    27, -1, 16, 17, 11, 17, 27, 18, -2, 24, 14, -0,
    -229, 9, 7, 9, -54, -48, -9, -18, 17, -7, -20, -9,
    17, -14, -13, -9, -9, -12, -51, -32, -3, -27, 150, -29,
    -15, -15, -12, -11, -5, -5, -11, -16, -3, -29, -10, -20,
    -38, -46, -26, -12, 59, -7, -13, 13, -10, -3, -0, 3,
    -3, -14, 9, -17, -19, -41, -22, -65, -19, 10, -12, -0,
    -6, -25, 1, 9, -7, -13, -15, -20, 6, -11, -25, -4,
    -4, 35, -6, 15, 0, -8, 15, -20, 11, -15, 1, -32,
    1, -21, 1, 16, 178, -8, 14, -22, 4, -14, -19, 1,
    -11, 6, -9, -17, 28, 1, -18, -17, -23, 15, -5, 2,
    -2, 0, 0, -16, 26, 19, -22, -7, -14, 23, -50, 2,
    8, 2, 3, 11, 15, 14, -6, 2, -26, -29, -39, -23,
    5, -12, 19, 13, -28, -15, -22, -12, -22, -23, 1, 10,
    -5, -9, 17, 1, -12, 14, 12, -4, -6, -17, 17, 19,
    -9, 1, -7, -4, -8, 18, -0, 1, -10, -27, -5, -6,
    -12, 14, -28, -21, -9, -6, -16, -7, -8, -1, 13, -24,
    -32, 26, 0, -7, -114, -2, -12, -2, 5, 82, 47, 41,
    -30, -11,
};
// clang-format on

/// Some links decide glyphs in `context` themselves; then the engine needs less.
struct Driver {
    BusKind kind;
    int bytes_per_pixel;
    int bytes;
    int with_contexts;        ///< If there are such, and a face is enlarged.
    int with_contexts_alone;  ///< No face is enlarged; some are in tones, in context.
    int with_nothing_else;    ///< Nor is anything in tones in context.
};
inline constexpr Driver drivers[] = {
    {BusKind::spi, 2, 254, 280, 274, 260},
    {BusKind::spi, 3, 338, 364, 358, 344},
    {BusKind::spi_timed, 2, 270, 528, 30, -190},
    {BusKind::spi_timed, 3, 362, 388, 382, 368},
    {BusKind::usart_spi, 2, 358, 392, 378, 364},
    {BusKind::usart_spi, 3, 448, 484, 468, 454},
    {BusKind::parallel8, 2, 378, 404, 398, 384},
};

/// Reading the touch sheet with its calibration, in place of a finger from two registers: the median of some engines.
inline constexpr int touch_reading = 684;

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main: bytes for each of size_terms(), and by how much they were too few at most for an engine held out.
// clang-format off
inline constexpr double stack_terms[] = {
    156, 7, 21, -20, -17, -12, 30, -2, -18, 0, 15, 3,
    -0, -1, 8, 4, 5, 10, 2, -7, 40, 48, 38, -7,
    6, 20, 32, 12, 8, 9, 4, -1, 3, 4, 2, -1,
    2, -1, 4, 2, 7, 10, -19, -1, 0, 6, -1, 4,
    0, 2, -1, 5, 0, -4, -2, 1, -16, 6, 5, 5,
    28, 90, -1, 0, 0, 2, -2, -2, 0, -0, 0, 0,
    1, -2, -1, 0, 1, -2, -0, 0, -10, 0, -3, -1,
    -2, -0, 0, -0, 2, 0, 1, -0, 0, -3, 1, 0,
    0, -0, -0, -0, -1, 2, -0, -6, 1, 1, 0, -1,
    -1, 0, 3, 1, -3, 2, -0, 3, -5, 2, -0, 0,
    -0, -0, -0, -0, -0, -2, 2, -2, -0, 1, -3, 2,
    1, 1, -0, -0, 1, 2, -1, -0, 1, 2, -1, -1,
    -1, 3, -0, 0, 0, 1, 0, -2, -0, -0, 0, -0,
    2, 0, -1, 2, 3, -0, -0, -0, 0, 1, 1, 0,
    -1, 0, 0, 0, 1, 4, -0, -1, 2, -1, -0, 2,
    -3, -1, -3, 1, 1, 3, -19, -8, 0, -5, -23, 3,
    -0, 3, -1, -2, -1, 2, -2, 0, 3, -2, 1, -0,
    -0, -2, -2, 4, 2, -0, -2, 2, -0, 2, 1, 1,
    0, -0, 1, 0, 2, 2, 3, 0, 3, 1, -1, 1,
    -1, -1, 1, 0, -2, -0, -3, 2, 0, -0, 1, -0,
    -1, -1, -0, -2, -0, -0, 1, -2, -4, 1, 2, -7,
    1, 0, -3, 1, 8, 2, -2, -1, 1, -2, 2, 0,
    -2, -0, 1, -4, -1, 0, 1, 2, 1, 1, -1, 1,
    -2, -1, -1, -0, 1, -1, 1, -2, -0, -1, -1, -0,
    4, 1, -3, -1, 1, -2, -0, 2, -0, -0, -3, 2,
    4, -1, 0, 1, 1, 1, -2, -0, 0, 1, -2, -3,
    -0, -0, 3, 0, 0, -1, -0, 1, 1, 0, 0, -1,
    -1, 1, -0, -0, -2, -3, -3, 0, 4, 1, -0, -4,
    -2, 1, 0, 1, -0, 1, 0, -1, 1, -1, 0, 1,
    -1, -2, -1, -11, -7, 3, -1, -28, -2, 4, -18, 3,
    -3, -13,
};
// clang-format on
inline constexpr double stack_margin = 31;
/// What comes on top where the bus sends glyphs in `context` by itself.
inline constexpr int stack_of_contexts = 10;
/// The same of the engine with all parts, return addresses included.
inline constexpr int stack = 402;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00082;

}  // namespace dialplate::measured

// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

inline constexpr const char* part = "ATmega328P";
inline constexpr const char* toolchain = "avr-g++ 5.4.0 -Os -flto -mrelax for the ATmega328P";

/// Engines compiled for the fit, and others to judge it by.
inline constexpr int samples = 260;
inline constexpr int held_out = 60;
/// Greatest and median error of a predicted size among those held out, as a part of it.
inline constexpr double worst_error = 0.0259111;
inline constexpr double median_error = 0.00368421;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double engine_terms[] = {
    1979, 979, 938, 905, 1073, 316, 851, 936, 1369, 103, 859, 90, 222, 104, 869, 50, 16, 210, 231, 209, 1519, 700, 418, 103, 37, -510, -539, 276, 195, -6, -16, -38, 41, -4, 1, 0, 79, 71, 181, -9, -21, -4, 55, 47, -34, 3, 21, -47, -5, 21, -28, -17,
};
// clang-format on

struct Driver {
    BusKind kind;
    int bytes_per_pixel;
    int bytes;
    int with_contexts;  ///< If glyphs in `context` are drawn: some links do it themselves.
};
inline constexpr Driver drivers[] = {
    {BusKind::spi, 2, 230, 230},
    {BusKind::spi, 3, 316, 316},
    {BusKind::spi_timed, 2, 246, 676},
    {BusKind::spi_timed, 3, 344, 344},
    {BusKind::usart_spi, 2, 344, 344},
    {BusKind::usart_spi, 3, 438, 438},
    {BusKind::parallel8, 2, 360, 360},
};

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main, return addresses included.
inline constexpr int stack = 181;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00126;

}  // namespace dialplate::measured

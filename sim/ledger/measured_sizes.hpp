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
inline constexpr double worst_error = 0.0257596;
inline constexpr double median_error = 0.00404645;

/// Bytes of flash for each of size_terms().
// clang-format off
inline constexpr double engine_terms[] = {
    2474, 1090, 1042, 868, 1112, 334, 512, 585, 987, 90, 739, 91,
    223, 99, 871, 39, 63, 210, 211, 215, 1519, 134, 46, 19,
    -191, -200, 275, 198, 2, 2, -2, 56, -19, 27, -14, 34,
    45, 118, -2, -20, 1, 16, 57, -11, -15, 22, -39, 1,
    23, -33, -4,
};
// clang-format on

struct Driver {
    BusKind kind;
    int bytes_per_pixel;
    int bytes;
};
inline constexpr Driver drivers[] = {
    {BusKind::spi, 2, 228},
    {BusKind::spi, 3, 308},
    {BusKind::spi_timed, 2, 244},
    {BusKind::spi_timed, 3, 334},
    {BusKind::usart_spi, 2, 342},
    {BusKind::usart_spi, 3, 430},
    {BusKind::parallel8, 2, 358},
};

/// RAM of the engine with all parts, without its arena.
inline constexpr int engine_state = 79;
/// Longest path of calls below main, return addresses included.
inline constexpr int stack = 181;

/// What the whole engine grows by on a part with more than 128 KiB.
inline constexpr const char* large_avr_part = "ATmega2560";
inline constexpr double large_avr_factor = 1.00128;

}  // namespace dialplate::measured

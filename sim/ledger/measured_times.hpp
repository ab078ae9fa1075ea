// Written by tests/firmware/measure_times.cpp from firmware run on a simulated chip; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

/// What an update takes beside its bytes on the bus: cycles for each of draw_terms().
struct Drawing {
    BusKind kind;
    double terms[8];
    int updates;        ///< Run and timed.
    double median_error;  ///< Of the whole time of an update, as a part of it.
    double worst_error;
};
// clang-format off
inline constexpr Drawing drawing[] = {
    {BusKind::spi, {-4.66, 4.42, 294.27, -21.73, -2236.31, 58.25, 780.24, -1590.85}, 236, 0.0343601, 0.255863},
    {BusKind::spi_timed, {-2.58, 6.85, 282.78, -29.07, -2389.37, 58.27, 778.63, -1409.19}, 236, 0.0389008, 0.267938},
    {BusKind::usart_spi, {-2.03, 7, 255.97, -41.86, -2379.38, 58.23, 775.78, -1316.84}, 236, 0.0419057, 0.277557},
    {BusKind::parallel8, {-0.71, 4.34, 271.65, 23.12, -2853.64, 57.12, 694.15, -839.24}, 236, 0.06644, 0.390443},
};
// clang-format on

}  // namespace dialplate::measured

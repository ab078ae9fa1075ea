// Written by tests/firmware/measure_times.cpp from firmware run on a simulated chip; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

/// What an update takes beside its bytes on the bus: cycles for each of draw_terms().
struct Drawing {
    BusKind kind;
    double terms[8];
    int updates;          ///< Run and timed.
    double median_error;  ///< Of the whole time of an update, as a part of it.
    double worst_error;
};
// clang-format off
inline constexpr Drawing drawing[] = {
    {BusKind::spi, {-2.04, 5.17, 168.55, -35.27, -651.98, 45.83, 767.68, 1124.09}, 236, 0.0328785, 0.273075},
    {BusKind::spi_timed, {-0.61, 7.61, 185.66, -42.06, -770.39, 45.04, 765.19, 1371.7}, 236, 0.0371563, 0.286874},
    {BusKind::usart_spi, {-0.59, 7.77, 173.53, -55.15, -751.91, 44.83, 762.73, 1458.33}, 236, 0.0408768, 0.297314},
    {BusKind::parallel8, {-0.89, 5.04, 155.41, 6.75, -860.56, 41.56, 684.11, 2594.16}, 236, 0.069653, 0.413951},
};
// clang-format on

}  // namespace dialplate::measured

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
    {BusKind::spi, {-1.04, 5.01, 112.25, -55.53, 446.36, 41.27, 801.5, 1135.44}, 236, 0.0338611, 0.267232},
    {BusKind::spi_timed, {0.4, 7.45, 129.43, -61.36, 341.69, 40.35, 796.33, 1379.81}, 236, 0.0410594, 0.281721},
    {BusKind::usart_spi, {0.45, 7.63, 117.2, -73.94, 373.62, 39.96, 792.14, 1482.63}, 236, 0.0445605, 0.292708},
    {BusKind::parallel8, {-0.04, 5.03, 111.89, -1.35, 131.17, 36.16, 689.72, 2776.04}, 236, 0.076797, 0.425705},
};
// clang-format on

}  // namespace dialplate::measured

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
    {BusKind::spi, {-17.4, -1.05, 1889.82, 313.76, 245.33, 3863.72, -25444.9}, 236, 0.0869338, 0.762203},
    {BusKind::spi_timed, {-13.04, 1.94, 1722.28, 294.02, 379.25, 3739.06, -23583.8}, 236, 0.0985278, 0.780597},
    {BusKind::usart_spi, {-10.98, 2.41, 1578.56, 271.68, 607.03, 3684.98, -22574.6}, 236, 0.109213, 0.794699},
    {BusKind::parallel8, {-2.51, 0.23, 807.44, 211.36, 4340.69, 3001.19, -17106.9}, 236, 0.164233, 1.17289},
};
// clang-format on

}  // namespace dialplate::measured

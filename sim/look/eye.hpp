// What an eye at a distance makes of the glass.
//
// Model: each point of light is spread by a Gaussian whose full width at half its height is the eye's
// minimum angle of resolution, 1 minute of arc divided by the decimal acuity (ISO 8596: acuity 1.0 tells a
// gap of 1' apart). Bars at that limit, 1' of light beside 1' of dark, keep 41 % of their modulation:
// exp(-2 (pi s / period)^2) with s = 1' / 2.3548 and a period of 2'. The choice of a Gaussian and of its width is
// ours; no standard gives one. Computed in linear light. Not modelled: the colour errors of the eye, its
// loss of contrast in the dark, reading with experience.
//
// Whoever looks at the picture adds an eye of his own: enlarge it, or go near, until that no longer counts.
#pragma once

#include "sim/layout/units.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

struct Eye {
    double acuity = 1.0;   ///< Decimal, above 0: 1.0 is normal, 0.5 half of it.
    Millimetres distance;  ///< To the glass, above 0.
};

/// Size on the glass of one pixel of a picture, which is less than a pixel of the glass when enlarged.
struct PixelSize {
    Millimetres across, down;
};

/// Standard deviation of the spread on the glass.
Millimetres spread_of(const Eye& eye);

/// The picture as that eye sees it; its border repeats beyond the edge.
/// @pre The sizes are positive.
Rgb888 seen_by(const Eye& eye, const Rgb888& picture, const PixelSize& pixel);

}  // namespace dialplate

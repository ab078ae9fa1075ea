// Colours as the CIE counts them: tristimulus values, chromaticity, lightness and colour difference.
#pragma once

#include "sim/colour/linear_light.hpp"

namespace dialplate {

/// Tristimulus values, 2-degree observer; Y of white is 1.
struct Xyz {
    double x = 0, y = 0, z = 0;
};

/// Source: IEC 61966-2-1, primaries of sRGB to seven figures (from memory; CVD-07 holds it against published
/// colour differences).
[[nodiscard]] Xyz tristimulus(const LinearRgb& light);

/// CIE 1976 chromaticity u', v'.
struct Chromaticity {
    double u = 0, v = 0;
};

/// Of black: that of white, so that it differs from nothing.
/// Source: CIE 1976 UCS: u' = 4 X / (X + 15 Y + 3 Z), v' = 9 Y / (X + 15 Y + 3 Z).
[[nodiscard]] Chromaticity chromaticity(const LinearRgb& light);

/// Distance in the u'v' diagram.
[[nodiscard]] double apart(const Chromaticity& a, const Chromaticity& b);

/// CIELAB, white D65.
struct Lab {
    double l = 0;  ///< Lightness, 0 to 100.
    double a = 0, b = 0;
};
[[nodiscard]] Lab lab(const LinearRgb& light);

/// Colour difference CIEDE2000, with all three weights 1. About 1 is the least that can be seen side by
/// side.
/// Source: Sharma, Wu, Dalal, Color Res. Appl. 30(1), 21-30, 2005, whose 34 pairs it meets to 4 decimals.
[[nodiscard]] double ciede2000(const Lab& first, const Lab& second);

}  // namespace dialplate

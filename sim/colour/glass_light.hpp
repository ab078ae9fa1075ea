// Luminances on the glass of a display in a lit room.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate {

/// Luminances, cd/m2.
struct GlassLight {
    double white = 250.0;    ///< Of a white pixel in the dark.
    double black = 0.5;      ///< Of a black pixel in the dark.
    double reflected = 0.0;  ///< What the glass throws back.

    /// Of a pixel of that relative luminance (0 black, 1 white), with the reflection in it.
    [[nodiscard]] double of(double relative_luminance) const {
        return black + (white - black) * relative_luminance + reflected;
    }
    /// White against black with the reflection in both, 1 or more. Source: CON-12.
    [[nodiscard]] double contrast() const { return (white + reflected) / (black + reflected); }
};

/// The light on a layout's glass at an illuminance: luminance, contrast and reflectance of the display's
/// data sheet; where it has none, 250 cd/m2, 500:1 and 0.04, which are usual for small modules.
/// Source: reflected light of a diffuse surface is E rho / pi (CON-13).
GlassLight glass_light(const Layout& layout, Lux illuminance);

/// Ratio of two luminances, 1 or more, in either order. Not to be fed from the ratio of the WCAG, whose
/// 0.05 already stands for reflected light (CON-15). Source: CON-12.
[[nodiscard]] double luminance_ratio(double luminance, double other);

}  // namespace dialplate

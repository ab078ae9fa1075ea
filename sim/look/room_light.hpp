// The glass in a lit room: what the room adds to every pixel.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// Luminances on the glass, cd/m2.
struct GlassLight {
    double white = 250.0;    ///< Of a white pixel in the dark.
    double black = 0.5;      ///< Of a black pixel in the dark.
    double reflected = 0.0;  ///< What the glass throws back.

    /// White against black with the reflection in both, 1 or more. Source: CON-12.
    [[nodiscard]] double contrast() const { return (white + reflected) / (black + reflected); }
};

/// The light on a layout's glass at an illuminance: luminance, contrast and reflectance of the display's
/// data sheet; where it has none, 250 cd/m2, 500:1 and 0.04, which are usual for small modules.
/// Source: reflected light of a diffuse surface is E rho / pi (CON-13).
GlassLight glass_light(const Layout& layout, Lux illuminance);

/// The picture as an eye sees it that has adapted to the white of the glass: black is lifted by what the
/// room adds, white stays. Computed in linear light. Mirror images in the glass are not modelled, nor an eye
/// that has adapted to something brighter than the display.
Rgb888 in_room_light(const Rgb888& picture, const GlassLight& light);

}  // namespace dialplate

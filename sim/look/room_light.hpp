// The glass in a lit room: what the room adds to every pixel.
#pragma once

#include "sim/colour/glass_light.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// The picture as an eye sees it that has adapted to the white of the glass: black is lifted by what the
/// room adds, white stays. Computed in linear light. Mirror images in the glass are not modelled, nor an eye
/// that has adapted to something brighter than the display.
Rgb888 in_room_light(const Rgb888& picture, const GlassLight& light);

}  // namespace dialplate

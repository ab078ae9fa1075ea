// A picture of faces, each drawn pixel for pixel as on the glass.
#pragma once

#include "fonts/face.hpp"
#include "sim/commands/weigh_fonts.hpp"
#include "sim/look/rgb888.hpp"

#include <vector>

namespace dialplate {

/// Draws the faces below one another, in the order they come, their glyphs side by side, wrapped at 640 pixels. Above
/// each stands what it is and the angle it subtends, below that what each packing takes, in bytes and in milliseconds a digit.
/// @param labels  Our own small face, all of ASCII; a character it lacks is left out.
Rgb888 draw_sheet(const std::vector<WeighedFace>& faces, const RasterFace& labels);

}  // namespace dialplate

// A picture of faces, each drawn pixel for pixel as on the glass.
#pragma once

#include "fonts/face.hpp"
#include "sim/commands/png.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// One face on the sheet and the words above it.
struct FaceSample {
    std::string label;
    RasterFace face;
    int enlarged = 1;  ///< Glyph pixels are drawn this large.
};

/// Draws the samples below one another, their glyphs side by side, wrapped at about 640 pixels.
/// @param labels  Our own small face, all of the characters in the labels; a character it lacks is
///                left out.
Rgb888 draw_sheet(const std::vector<FaceSample>& samples, const RasterFace& labels);

}  // namespace dialplate

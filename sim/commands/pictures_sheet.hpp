// A picture of the pictures of a layout: each as its file has it, and beside it as the display shows it.
#pragma once

#include "fonts/face.hpp"
#include "sim/commands/loaded.hpp"
#include "sim/commands/png.hpp"

namespace dialplate {

/// Draws them below one another, left the file over what stands behind it, right the glass, both enlarged alike, with
/// name, size, paints and bytes of each packing above. Empty if no page has a picture.
/// @param palette  In force on the glass.
/// @param labels   Our own small face, with all of ASCII.
Rgb888 draw_pictures(const Loaded& loaded, int palette, const RasterFace& labels);

}  // namespace dialplate

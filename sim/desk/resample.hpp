// A picture shown larger or smaller by any factor: each pixel of the screen gets the mean light of what it covers.
#pragma once

#include "sim/desk/canvas.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// Draws a picture over an area of the screen, as far as that lies in `part`. The mean is taken in linear light,
/// as an eye takes it that cannot tell the pixels apart; edges that fall within a pixel of the screen are
/// mixed there, nothing is left out and nothing sharpened.
void draw_resampled(Canvas& canvas, const Area& over, const Rgb888& picture, const Area& part);

}  // namespace dialplate

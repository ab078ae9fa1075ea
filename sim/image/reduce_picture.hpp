// From a picture in full colour to the two or four paints that the image holds it in.
#pragma once

#include "fonts/face.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace dialplate {

/// Row-major, four bytes a pixel: red, green, blue, and how opaque it is, 0 to 255.
struct ColourPicture {
    int width = 0, height = 0;
    std::vector<std::uint8_t> rgba;
};

/// What one sees of it over a colour, in linear light: 0xRRGGBB for each pixel.
std::vector<std::uint32_t> laid_over(const ColourPicture& picture, std::uint32_t ground);

/// In two paints. A pixel is ink if its relative luminance is below one half, laid over white as far as it is
/// transparent: dark drawings on light ground come out as drawn. Both in linear light, so that a grey is ink if a
/// pattern of black and white dots that looks as light has more black.
Bitmap reduce_to_ink(const ColourPicture& picture);

/// In tones. A pixel takes the paint that it differs least from (CIEDE2000), the first among equals; laid over the first paint as far as it is transparent, in linear light. So a picture drawn in the four paints
/// comes out as drawn, and greys go to paints by their lightness.
/// @param paints  0xRRGGBB, from ground to ink.
Bitmap reduce_to_tones(const ColourPicture& picture, const std::array<std::uint32_t, 4>& paints);

}  // namespace dialplate

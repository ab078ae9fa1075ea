// A PNG file as a 1-bit picture.
#pragma once

#include "fonts/face.hpp"

#include <optional>
#include <string>

namespace dialplate {

struct PictureFile {
    std::optional<Bitmap> picture;
    std::string error;  ///< One sentence when there is none.
};

/// Reads a PNG of any kind. A pixel is ink when its luma (ITU-R BT.601 weights on the coded values), laid
/// over white as its alpha says, is below one half: dark drawings on light ground come out as drawn.
PictureFile read_picture(const std::string& path);

}  // namespace dialplate

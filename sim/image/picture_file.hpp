// A PNG file as a picture in full colour.
#pragma once

#include "sim/image/reduce_picture.hpp"

#include <optional>
#include <string>

namespace dialplate {

struct PictureFile {
    std::optional<ColourPicture> picture;
    std::string error;  ///< One sentence when there is none.
};

/// Reads a PNG of any kind.
PictureFile read_picture(const std::string& path);

}  // namespace dialplate

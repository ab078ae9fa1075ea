// Short words in a picture, in one of the project's own small faces.
#pragma once

#include "fonts/face.hpp"
#include "sim/look/rgb888.hpp"

#include <string_view>

namespace dialplate {

/// Where words begin (their top left corner), their colour, and how large each pixel of the face is.
struct WordPlace {
    int x = 0, y = 0;
    std::uint32_t ink = 0xFFFFFF;
    int enlarged = 1;
};

/// Columns that words of ASCII take, not enlarged. A character that the face lacks takes none.
int words_width(const RasterFace& face, std::string_view words);

/// Writes words of ASCII; what lies outside the picture is left out.
void write_words(Rgb888& picture,
                 const RasterFace& face,
                 const WordPlace& place,
                 std::string_view words);

}  // namespace dialplate

// Heights and strokes, measured on the pixels of a rasterised face: what an eye meets on the glass, not
// what the font's tables promise.
#pragma once

#include "fonts/face.hpp"

#include <optional>

namespace dialplate {

/// Rows of ink of a capital: of the first letter that the face has of those that end flat at top and
/// bottom ("H" before "O"); without capitals, of a digit. Not enlarged.
std::optional<int> capital_height(const RasterFace& face);

/// Rows of ink of a lower-case letter without ascender or descender, flat ones first. Not enlarged.
std::optional<int> x_height(const RasterFace& face);

/// Columns of an upright stroke: the median length of the runs of ink in the rows of all letters and
/// digits (ASCII). Not enlarged.
std::optional<int> stem_width(const RasterFace& face);

}  // namespace dialplate

// The bit layer of the packing `plain`: pixels as they are.
#pragma once

#include "fonts/bits.hpp"
#include "fonts/face.hpp"

namespace dialplate::fonts {

/// All pixels, row by row, no padding between rows; one bit each, or two in tones.
void write_plain(BitWriter& to, const Bitmap& bitmap);

/// @return Nothing if the bits end too early.
std::optional<Bitmap> read_plain(BitReader& from, int width, int height, bool tones = false);

}  // namespace dialplate::fonts

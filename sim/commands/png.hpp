// Pictures as PNG bytes.
#pragma once

#include "sim/look/rgb888.hpp"

#include <cstdint>
#include <vector>

namespace dialplate {

/// Each pixel as a square of `zoom` x `zoom`.
/// @pre zoom >= 1.
Rgb888 enlarged(const Rgb888& picture, int zoom);

/// A PNG file, 8 bits a channel, no alpha. Empty only if libpng fails (no memory).
std::vector<std::uint8_t> png_bytes(const Rgb888& picture);

}  // namespace dialplate

// How large a picture file is, without decoding it.
#pragma once

#include <array>
#include <optional>
#include <string>

namespace dialplate {

/// Width and height of a PNG file, from its first 24 bytes; nullopt if it cannot be read, is no PNG, or
/// is larger than a layout can place (1,023 pixels).
/// Source: PNG specification (W3C, third edition), 5.2 signature and 11.2.1 IHDR.
std::optional<std::array<int, 2>> png_size(const std::string& path);

}  // namespace dialplate

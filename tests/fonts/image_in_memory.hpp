// An image as the engine reads it, out of bytes of the test.
#pragma once

#include "ui/rom.hpp"

#include <cstdint>
#include <vector>

namespace dialplate {

using Image = Rom<MemoryBytes>;

inline Image image_of(const std::vector<std::uint8_t>& bytes) {
    return Image(MemoryBytes(bytes.data(), static_cast<std::uint16_t>(bytes.size())));
}

}  // namespace dialplate

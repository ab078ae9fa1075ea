// 16-bit numbers as the image holds them: low byte first.
#pragma once

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace dialplate::fonts {

/// @pre at + 2 <= bytes.size(), number <= 0xFFFF.
inline void put_u16(std::vector<std::uint8_t>& bytes, std::size_t at, std::size_t number) {
    bytes[at] = static_cast<std::uint8_t>(number & 0xFF);
    bytes[at + 1] = static_cast<std::uint8_t>(number >> 8);
}

/// @pre at + 2 <= bytes.size().
inline std::size_t get_u16(std::span<const std::uint8_t> bytes, std::size_t at) {
    return bytes[at] | static_cast<std::size_t>(bytes[at + 1]) << 8;
}

}  // namespace dialplate::fonts

#include "sim/layout/picture_size.hpp"

#include <cstdint>
#include <fstream>
#include <string_view>

namespace dialplate {

std::optional<std::array<int, 2>> png_size(const std::string& path) {
    // Signature, then a chunk: u32 length 13, "IHDR", u32 width, u32 height (big-endian).
    constexpr std::string_view start("\x89PNG\r\n\x1A\n\0\0\0\x0DIHDR", 16);
    constexpr std::uint32_t largest = 1023;
    std::array<char, 24> head{};
    std::ifstream file(path, std::ios::binary);
    if (!file.read(head.data(), head.size())) return std::nullopt;
    if (std::string_view(head.data(), start.size()) != start) return std::nullopt;
    const auto number = [&](std::size_t at) {
        std::uint32_t value = 0;
        for (std::size_t i = 0; i < 4; ++i) {
            value = value << 8 | static_cast<unsigned char>(head[at + i]);
        }
        return value;
    };
    const std::uint32_t width = number(16), height = number(20);
    if (width < 1 || width > largest || height < 1 || height > largest) return std::nullopt;
    return std::array{static_cast<int>(width), static_cast<int>(height)};
}

}  // namespace dialplate

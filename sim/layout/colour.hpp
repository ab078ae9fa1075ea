// Colours as a display holds them: five bits of red, six of green, five of blue.
#pragma once

#include <cstdint>

namespace dialplate {

/// What the display keeps of a colour.
/// @param rgb888  0xRRGGBB.
/// @return RGB565, red in bits 11-15, green 5-10, blue 0-4; its high byte goes over the wire first.
/// Source: MIPI DCS, 16 bits a pixel; standards C565-01 (derived).
[[nodiscard]] constexpr std::uint16_t pack_rgb565(std::uint32_t rgb888) {
    const std::uint32_t red = rgb888 >> 16 & 0xF8;
    const std::uint32_t green = rgb888 >> 8 & 0xFC;
    const std::uint32_t blue = rgb888 >> 3 & 0x1F;
    return static_cast<std::uint16_t>(red << 8 | green << 3 | blue);
}

/// The colour that a display shows for an RGB565 word: each part's high bits are repeated below it, so
/// that nothing stays nothing and full stays full.
/// @return 0xRRGGBB.
/// Source: standards C565-02 (derived).
[[nodiscard]] constexpr std::uint32_t expand_rgb565(std::uint16_t word) {
    const std::uint32_t red = word >> 11 & 0x1Fu;
    const std::uint32_t green = word >> 5 & 0x3Fu;
    const std::uint32_t blue = word & 0x1Fu;
    const std::uint32_t red8 = red << 3 | red >> 2;
    const std::uint32_t green8 = green << 2 | green >> 4;
    const std::uint32_t blue8 = blue << 3 | blue >> 2;
    return red8 << 16 | green8 << 8 | blue8;
}

}  // namespace dialplate

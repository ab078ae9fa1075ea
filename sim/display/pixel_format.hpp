// How a pixel travels on the bus.
#pragma once

#include <array>
#include <cstdint>

namespace dialplate {

/// The two bytes of a pixel in 16-bit format, high byte first (standards C565-01, BUS-20).
[[nodiscard]] constexpr std::array<std::uint8_t, 2> sixteen_bit(std::uint16_t rgb565) {
    return {static_cast<std::uint8_t>(rgb565 >> 8), static_cast<std::uint8_t>(rgb565 & 0xFF)};
}

/// The three bytes of a pixel in 18-bit format: red, green, blue, each widened to eight bits by
/// repeating its top bits, so that white is FF FF FF (standards C565-02). The controller ignores
/// the lowest two.
[[nodiscard]] constexpr std::array<std::uint8_t, 3> eighteen_bit(std::uint16_t rgb565) {
    return {static_cast<std::uint8_t>(((rgb565 >> 8) & 0xF8) | (rgb565 >> 13)),
            static_cast<std::uint8_t>(((rgb565 >> 3) & 0xFC) | ((rgb565 >> 9) & 3)),
            static_cast<std::uint8_t>(((rgb565 << 3) & 0xF8) | ((rgb565 >> 2) & 7))};
}

/// The RGB565 colour in the top bits of three bytes: what the model keeps of an 18-bit pixel.
[[nodiscard]] constexpr std::uint16_t rgb565_of(std::array<std::uint8_t, 3> wide) {
    return static_cast<std::uint16_t>(((wide[0] & 0xF8u) << 8) | ((wide[1] & 0xFCu) << 3) |
                                      (wide[2] >> 3));
}

}  // namespace dialplate

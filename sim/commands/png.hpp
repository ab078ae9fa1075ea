// Pictures as PNG bytes.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

namespace dialplate {

/// A picture in 8-bit colour: 0xRRGGBB, row-major, width x height.
struct Rgb888 {
    int width = 0;
    int height = 0;
    std::vector<std::uint32_t> pixels;

    Rgb888() = default;
    Rgb888(int w, int h, std::uint32_t ground)
        : width(w),
          height(h),
          pixels(static_cast<std::size_t>(w) * static_cast<std::size_t>(h), ground) {}
    std::uint32_t& at(int x, int y) {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
    }
    [[nodiscard]] std::uint32_t at(int x, int y) const {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
    }
};

/// Each pixel as a square of `zoom` x `zoom`.
/// @pre zoom >= 1.
Rgb888 enlarged(const Rgb888& picture, int zoom);

/// A PNG file, 8 bits a channel, no alpha. Empty only if libpng fails (no memory).
std::vector<std::uint8_t> png_bytes(const Rgb888& picture);

}  // namespace dialplate

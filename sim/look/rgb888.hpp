// A picture in memory, as a PNG file or a screen wants it.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace dialplate {

/// A picture in 8-bit colour: 0xRRGGBB, sRGB, row-major, width x height.
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
    friend bool operator==(const Rgb888&, const Rgb888&) = default;
};

}  // namespace dialplate

// Places on the glass. Origin at the top left as the reader sees it, x to the right, y down, in pixels;
// rectangles are half-open: x <= column < x + w.
#pragma once

#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

// On an 8-bit machine arithmetic happens in int; these two say that a result is known to fit.
constexpr uint16_t word(uint32_t value) {
    return static_cast<uint16_t>(value);
}
constexpr uint8_t byte(uint32_t value) {
    return static_cast<uint8_t>(value);
}
constexpr uint16_t smaller(uint16_t a, uint16_t b) {
    return a < b ? a : b;
}
constexpr uint16_t greater(uint16_t a, uint16_t b) {
    return a < b ? b : a;
}

struct Rect {
    uint16_t x, y, w, h;
    bool contains(uint16_t px, uint16_t py) const {
        return px >= x && py >= y && px - x < w && py - y < h;
    }
};

struct Point {
    uint16_t x, y;
};

inline Rect read_rect(Reader& from) {
    const uint8_t x = from.u8(), y = from.u8(), w = from.u8(), h = from.u8(), high = from.u8();
    return Rect{word(x | ((high & 0x03u) << 8)),
                word(y | ((high & 0x0Cu) << 6)),
                word(w | ((high & 0x30u) << 4)),
                word(h | ((high & 0xC0u) << 2))};
}

inline Point read_point(Reader& from) {
    const uint8_t x = from.u8(), y = from.u8(), high = from.u8();
    return Point{word(x | ((high & 0x03u) << 8)), word(y | ((high & 0x0Cu) << 6))};
}

}  // namespace dialplate

// Places on the glass. Origin at the top left as the reader sees it, x to the right, y down, in pixels;
// rectangles are half-open: x <= column < x + w.
#pragma once

#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

struct Rect {
    uint16_t x, y, w, h;
    bool contains(uint16_t px, uint16_t py) const {
        return px >= x && py >= y && px - x < w && py - y < h;
    }
};

struct Point {
    uint16_t x, y;
};

/// The low byte at `at`, with two more bits that stand `shift` up in the byte `high`.
constexpr uint16_t coordinate(uint8_t low, uint8_t high, uint8_t shift) {
    return word(low | (high >> shift & 3u) << 8);
}

template <class Rom>
__attribute__((noinline)) Rect read_rect(const Rom& rom, uint16_t at) {
    const uint8_t high = rom.u8(word(at + 4u));
    return Rect{coordinate(rom.u8(at), high, 0),
                coordinate(rom.u8(word(at + 1u)), high, 2),
                coordinate(rom.u8(word(at + 2u)), high, 4),
                coordinate(rom.u8(word(at + 3u)), high, 6)};
}

template <class Rom>
__attribute__((noinline)) Point read_point(const Rom& rom, uint16_t at) {
    const uint8_t high = rom.u8(word(at + 2u));
    return Point{coordinate(rom.u8(at), high, 0), coordinate(rom.u8(word(at + 1u)), high, 2)};
}

}  // namespace dialplate

// Small displays for the tests, and eyes to look at them.
#pragma once

#include "sim/display/controller.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <vector>

namespace dialplate {

/// Glass and memory of one size, in the plain address mode for turn 0 and all others.
inline Display plain_display(int width, int height) {
    Display display;
    display.name = "test";
    display.width = display.memory_width = width;
    display.height = display.memory_height = height;
    return display;
}

/// A display whose four turns are those of a common 240x320 module, on smaller glass.
inline Display turned_display(int width, int height) {
    Display display = plain_display(width, height);
    display.turns = {
        TurnMode{0x48, 0, 0}, TurnMode{0x28, 0, 0}, TurnMode{0x88, 0, 0}, TurnMode{0xE8, 0, 0}};
    return display;
}

inline void send(Controller& controller, std::uint8_t code, std::vector<int> parameters = {}) {
    controller.command(code);
    for (const int byte : parameters)
        controller.data(static_cast<std::uint8_t>(byte));
}

/// Sleep out, 16 bit, display on, in an address mode.
inline void wake(Controller& controller, std::uint8_t address_mode) {
    send(controller, 0x11);
    send(controller, 0x3A, {0x55});
    send(controller, 0x36, {address_mode});
    send(controller, 0x29);
}

/// Opens a window: columns and pages, inclusive.
inline void open(Controller& controller, int left, int right, int top, int bottom) {
    send(controller, 0x2A, {left >> 8, left & 0xFF, right >> 8, right & 0xFF});
    send(controller, 0x2B, {top >> 8, top & 0xFF, bottom >> 8, bottom & 0xFF});
    send(controller, 0x2C);
}

inline void dot(Controller& controller, int column, int page, std::uint16_t colour) {
    open(controller, column, column, page, page);
    controller.data(static_cast<std::uint8_t>(colour >> 8));
    controller.data(static_cast<std::uint8_t>(colour & 0xFF));
}

/// The only pixel that is not black, as (x, y); (-1, -1) if there is none or more than one.
inline MemoryPixel lit_pixel(const std::vector<std::uint16_t>& glass, int width) {
    MemoryPixel found{-1, -1};
    int count = 0;
    for (std::size_t i = 0; i < glass.size(); ++i) {
        if (glass[i] == 0) continue;
        ++count;
        found = {static_cast<int>(i) % width, static_cast<int>(i) / width};
    }
    return count == 1 ? found : MemoryPixel{-1, -1};
}

}  // namespace dialplate

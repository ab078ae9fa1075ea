#include "sim/display/mounting.hpp"

#include "sim/display/address_map.hpp"

#include <algorithm>

namespace dialplate {

namespace {

/// Where the reader's (x, y) lies on the unturned glass when the picture is turned clockwise.
MemoryPixel unturned(const Display& display, int turn, MemoryPixel at) {
    const int right = display.width - 1;
    const int bottom = display.height - 1;
    switch (turn) {
        case 90:
            return {right - at.y, at.x};
        case 180:
            return {right - at.x, bottom - at.y};
        case 270:
            return {at.y, bottom - at.x};
        default:
            return at;
    }
}

MemoryPixel in_memory(const TurnMode& mode, const AddressMap& map, MemoryPixel at) {
    return map.memory_pixel(at.x + mode.column_offset, at.y + mode.page_offset);
}

}  // namespace

std::vector<std::string> turn_mistakes(const Display& display) {
    std::vector<std::string> mistakes;
    const MemorySize memory{display.memory_width, display.memory_height};
    const TurnMode& upright = display.turns[0];
    const AddressMap upright_map(upright.address_mode, memory);
    for (int turn = 0; turn < 360; turn += 90) {
        const TurnMode& mode = display.turns[static_cast<std::size_t>(turn / 90)];
        const AddressMap map(mode.address_mode, memory);
        const int width = turn % 180 == 0 ? display.width : display.height;
        const int height = turn % 180 == 0 ? display.height : display.width;
        const std::string name = "turn " + std::to_string(turn) + ": ";
        if (mode.column_offset < 0 || mode.page_offset < 0 ||
            width + mode.column_offset > map.columns || height + mode.page_offset > map.pages) {
            mistakes.push_back(name + "the glass reaches outside the controller's memory");
        }
        if (((mode.address_mode ^ upright.address_mode) & dcs::blue_first) != 0) {
            mistakes.push_back(name + "the BGR bit differs from that of turn 0");
        }
        // Both ways are affine, so they agree everywhere if they agree in three corners.
        const MemoryPixel corners[] = {{0, 0}, {width - 1, 0}, {0, height - 1}};
        const bool agree = std::all_of(std::begin(corners), std::end(corners), [&](MemoryPixel at) {
            return in_memory(mode, map, at) ==
                   in_memory(upright, upright_map, unturned(display, turn, at));
        });
        if (!agree) {
            mistakes.push_back(name + "shows the picture mirrored, shifted or turned otherwise");
        }
    }
    return mistakes;
}

}  // namespace dialplate

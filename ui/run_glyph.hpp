// A glyph in `runs`, decoded and sent whole. Format: image.md, "Face".
#pragma once

#include "ui/edges.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// Width in pixels of the bitmap, each drawn `times` x `times`; k: Rice parameters as the face has them.
struct RunShape {
    uint16_t at;
    uint8_t width, rows, times, k;
};

/// Sends the pixels of a window that is open. Ground that ends a row and begins the next is one push.
template <class Bus, class Parts, class Image>
__attribute__((noinline)) void send_run_glyph(Bus& bus,
                                              const Image& rom,
                                              const RunShape& shape,
                                              const Colours& colours) {
    // A row has at most 1,020 pixels.
    constexpr uint16_t most_run = 0x8000;
    RunRows bitmap{{shape.at, 0x80}, shape.k, shape.width, shape.rows};
    // One more than a row has, which only damaged data fills, and the end.
    uint8_t edges[2 * most_strokes + 2];
    uint16_t ground = 0;
    while (bitmap.left != 0) {
        const uint8_t rows = Parts::Runs::read(rom, bitmap, edges, sizeof edges - 1);
        for (uint16_t again = word(static_cast<unsigned>(rows) * shape.times); again != 0;
             --again) {
            uint8_t column = 0;
            for (const uint8_t* edge = edges; *edge != Edges::end;) {
                const uint8_t from = *edge++;
                bus.push(colours.ground,
                         word(ground + byte(static_cast<unsigned>(from) - column) * shape.times));
                column = *edge == Edges::end ? shape.width : *edge++;
                bus.push(colours.ink,
                         word(byte(static_cast<unsigned>(column) - from) * shape.times));
                ground = 0;
            }
            ground = word(ground + byte(static_cast<unsigned>(shape.width) - column) * shape.times);
            if (ground >= most_run) {
                bus.push(colours.ground, ground);
                ground = 0;
            }
        }
    }
    bus.push(colours.ground, ground);
}

}  // namespace dialplate

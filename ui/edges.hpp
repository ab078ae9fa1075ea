// A row of a bitmap as edges, and reading such rows from the packing `runs`. Format: image.md, "Face".
#pragma once

#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// A row by the columns where it turns from ground to ink and back, from the left, then `end`. Pixels of the bitmap.
struct Edges {
    /// More than any column.
    static constexpr uint8_t end = 255;
    /// One more than a row has, which only damaged data fills.
    static constexpr uint8_t most = 2 * most_digit_strokes + 1;

    uint8_t at[most + 1];
};

/// Columns from <= x < to; none: from == to. Pixels of the bitmap.
struct Columns {
    uint8_t from, to;
    uint8_t count() const { return byte(static_cast<unsigned>(to) - from); }
};

/// A place in the image to read bits from: of the byte before `at` those that are to come, then a one.
struct BitPlace {
    uint16_t at;
    uint8_t rest;

    template <class Image>
    __attribute__((always_inline)) bool next(const Image& rom) {
        bool bit = (rest & 0x80) != 0;
        rest = byte(static_cast<unsigned>(rest) << 1);
        if (rest == 0) {
            const uint8_t fresh = rom.u8(at++);
            bit = (fresh & 0x80) != 0;
            rest = byte(static_cast<unsigned>(fresh) << 1 | 1u);
        }
        return bit;
    }
};

/// Reads rows in `runs`. A microcontroller may bring one of its own: ui/mcu/runs_core.hpp.
struct RunsCore {
    /// @param parameters  Rice parameters, of ground in bits 0-3, of ink in bits 4-7.
    /// @param width       Of the row. Only damaged data has a run past it, which ends the row.
    /// @param edges       Takes the columns where ground turns to ink and back: one more than a row has,
    ///                    which only damaged data fills.
    /// @return            How many there are.
    template <class Image>
    static uint8_t read(const Image& rom,
                        BitPlace& place,
                        uint8_t parameters,
                        uint8_t width,
                        uint8_t* edges,
                        uint8_t room) {
        uint8_t k = parameters, column = 0, count = 0;
        do {
            uint8_t run = 0;
            while (run < width && place.next(rom)) {
                ++run;
            }
            for (uint8_t low_bits = k & 15u; low_bits != 0; --low_bits) {
                run = byte(2u * run + (place.next(rom) ? 1u : 0u));
            }
            k = byte(static_cast<unsigned>(k) << 4 | k >> 4);
            if (run >= width - column) {
                break;
            }
            column = byte(static_cast<unsigned>(column) + run);
            edges[count++] = column;
        } while (count != room);
        return count;
    }
};

}  // namespace dialplate

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

/// How two rows differ: the columns from the first to the last that do, and the widest gap between them. Half-open;
/// gap_from at or behind gap_to: there is none. to == 0: nothing differs.
struct Spans {
    uint8_t from, gap_from, gap_to, to;
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

/// A bitmap in `runs`, from where it is to be read on.
struct RunRows {
    BitPlace place;
    uint8_t parameters;  ///< Rice parameters, of ground in bits 0-3, of ink in bits 4-7.
    uint8_t width;
    uint8_t left;  ///< Rows that are not read, at least 1.
};

/// Reads rows in `runs`. A microcontroller may bring one of its own: ui/mcu/runs_core.hpp.
struct RunsCore {
    /// @param edges  Takes the columns where ground turns to ink and back, then Edges::end. Only damaged data has a
    ///               run past the width, or more than fit, which ends the row.
    /// @param room   How many it takes: one more than a row has, and without the end.
    /// @return       How many rows there are that look like this.
    template <class Image>
    static uint8_t read(const Image& rom, RunRows& bitmap, uint8_t* edges, uint8_t room) {
        BitPlace& place = bitmap.place;
        uint8_t k = bitmap.parameters, column = 0;
        do {
            uint8_t run = 0;
            while (place.next(rom) && ++run != 0) {
            }
            for (uint8_t low_bits = k & 15u; low_bits != 0; --low_bits) {
                run = byte(2u * run + (place.next(rom) ? 1u : 0u));
            }
            k = byte(static_cast<unsigned>(k) << 4 | k >> 4);
            if (run >= bitmap.width - column) {
                break;
            }
            column = byte(static_cast<unsigned>(column) + run);
            *edges++ = column;
        } while (--room != 0);
        *edges = Edges::end;
        uint8_t rows = 1;
        while (rows != bitmap.left && place.next(rom)) {
            ++rows;
        }
        bitmap.left = byte(static_cast<unsigned>(bitmap.left) - rows);
        return rows;
    }

    /// How two rows differ. Merges their edges: one that both have changes nothing between them; what is left, in
    /// turns, is where they begin to differ and to be alike.
    static Spans difference(const Edges& row, const Edges& other, uint8_t width) {
        Unlike unlike{row.at, other.at};
        Spans spans{unlike.next(), 0, 0, 0};
        uint8_t gap = 0;
        for (uint8_t from = spans.from; from != Edges::end;) {
            if (spans.to != 0 && byte(static_cast<unsigned>(from) - spans.to) > gap) {
                gap = byte(static_cast<unsigned>(from) - spans.to);
                spans.gap_from = spans.to;
                spans.gap_to = from;
            }
            const uint8_t to = unlike.next();
            spans.to = to == Edges::end ? width : to;
            from = to == Edges::end ? to : unlike.next();
        }
        return spans;
    }

private:
    /// The edges that only one of two rows has.
    struct Unlike {
        const uint8_t *a, *b;

        uint8_t next() {
            for (; *a == *b; ++a, ++b) {
                if (*a == Edges::end) {
                    return Edges::end;
                }
            }
            return *a < *b ? *a++ : *b++;
        }
    };
};

}  // namespace dialplate

// Glyphs drawn from geometry: no data at all. Format: image.md, "Face".
#pragma once

#include "ui/image_format.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// A glyph of a segment face: seven bars around two counters, with mitred ends one pixel apart.
struct SegmentShape {
    uint8_t width, height, stroke, gap;
    uint8_t glyph;

    uint8_t advance() const {
        return byte(static_cast<unsigned>(glyph > segment_glyph::minus ? stroke : width) + gap);
    }

    /// Row `y` of the cell, from the top.
    __attribute__((noinline)) void draw(uint8_t y, Row& row) const {
        row.clear();
        if (glyph > segment_glyph::minus) {
            dots(y, row);
        } else {
            bars(y, row);
        }
        row.add(false, gap);
    }

private:
    // The bars of a digit by their bits: top, the right ones from above, bottom, the left ones from
    // below, middle.
    enum : uint8_t {
        top = 1,
        upper_right = 2,
        lower_right = 4,
        bottom = 8,
        lower_left = 16,
        upper_left = 32,
        middle = 64,
        right = upper_right | lower_right,
        left = upper_left | lower_left,
        all = 127
    };

    static uint8_t lit(uint8_t digit) {
        switch (digit) {
            case 0:
                return all & ~middle;
            case 1:
                return right;
            case 2:
                return all & ~(upper_left | lower_right);
            case 3:
                return all & ~left;
            case 4:
                return right | upper_left | middle;
            case 5:
                return all & ~(upper_right | lower_left);
            case 6:
                return all & ~upper_right;
            case 7:
                return right | top;
            case 8:
                return all;
            case 9:
                return all & ~lower_left;
            default:
                return middle;
        }
    }

    void bars(uint8_t y, Row& row) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t middle_row = byte((static_cast<unsigned>(height) - stroke) / 2u);
        // Each side of the cell in this row: columns before the upright, of it, and after it.
        uint8_t before = 0, inked = stroke, after = 0, across = 0;
        bool upper = y < middle_row;
        if (y < stroke || from_below < stroke) {
            inked = y < stroke ? y : from_below;
            after = 1;
            across = y < stroke ? top : bottom;
        } else if (y >= middle_row && y - middle_row < stroke) {
            // Tips that meet half way up: `off` rows from the centre line of the middle bar.
            const uint8_t twice = byte(2u * (y - static_cast<unsigned>(middle_row)) + 1u);
            upper = twice < stroke;
            const uint8_t off = byte((upper ? static_cast<unsigned>(stroke) - twice
                                            : static_cast<unsigned>(twice) - stroke) /
                                     2u);
            const uint8_t half = byte(stroke / 2u);
            before = byte(static_cast<unsigned>(half) + 1u - off);
            inked = off == 0 ? uint8_t{0} : byte(2u * off - 1u);
            after = off == 0 ? uint8_t{0} : uint8_t{1};
            across = middle;
        }
        const uint8_t on = lit(glyph);
        const bool left_on = (on & (upper ? upper_left : lower_left)) != 0;
        const bool right_on = (on & (upper ? upper_right : lower_right)) != 0;
        row.add(false, before);
        row.add(left_on, inked);
        row.add(false, after);
        row.add((on & across) != 0,
                word(width - 2u * (static_cast<unsigned>(before) + inked + after)));
        row.add(false, after);
        row.add(right_on, inked);
        row.add(false, before);
    }

    void dots(uint8_t y, Row& row) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t third = byte(height / 3u);
        const bool pair = (y >= third && y - third < stroke) ||
                          (from_below >= third && from_below - third < stroke);
        row.add(glyph == segment_glyph::point ? from_below < stroke : pair, stroke);
    }
};

}  // namespace dialplate

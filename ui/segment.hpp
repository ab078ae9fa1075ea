// Glyphs drawn from geometry: no data at all. Format: image.md, "Face".
#pragma once

#include "ui/clipped_rows.hpp"
#include "ui/edges.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// A glyph of a segment face: seven bars around two counters, with mitred ends one pixel apart.
struct SegmentShape {
    uint8_t width, height, stroke, gap;
    uint8_t glyph;

    uint8_t advance() const {
        return byte(static_cast<unsigned>(glyph > segment_glyph::minus ? stroke : width) + gap);
    }

    /// Row `y` of the cell, from the top, as edges.
    __attribute__((noinline)) void read(uint8_t y, Edges& row) const {
        uint8_t* edge = row.at;
        if (glyph > segment_glyph::minus) {
            if (is_dot(y)) {
                edge = append(row, edge, 0, stroke);
            }
            *edge = Edges::end;
            return;
        }
        const Cut cut = this->cut(y);
        const uint8_t on = lit(glyph);
        const uint8_t inside = byte(static_cast<unsigned>(cut.before) + cut.inked);
        if (cut.inked != 0 && (on & cut.left()) != 0) {
            edge = append(row, edge, cut.before, inside);
        }
        if ((on & cut.across) != 0) {
            const uint8_t from = byte(static_cast<unsigned>(inside) + cut.after);
            edge = append(row, edge, from, byte(static_cast<unsigned>(width) - from));
        }
        if (cut.inked != 0 && (on & cut.right()) != 0) {
            edge = append(row,
                          edge,
                          byte(static_cast<unsigned>(width) - inside),
                          byte(static_cast<unsigned>(width) - cut.before));
        }
        *edge = Edges::end;
    }
    /// Zones of rows that digits are made of: bars across and uprights in turns.
    static constexpr uint8_t zones = 5;
    /// First row of a zone.
    uint8_t top_of(uint8_t zone) const {
        const uint8_t middle_row = byte((static_cast<unsigned>(height) - stroke) / 2u);
        return zone == 0   ? uint8_t{0}
               : zone == 1 ? stroke
               : zone == 2 ? middle_row
               : zone == 3 ? byte(static_cast<unsigned>(middle_row) + stroke)
                           : byte(static_cast<unsigned>(height) - stroke);
    }
    /// The bars that this digit has and another has not, or the other way round; bits.
    uint8_t bars_unlike(uint8_t other) const { return lit(glyph) ^ lit(other); }
    /// The columns of a zone in which some bars lie; none: empty.
    Columns columns_of(uint8_t some, uint8_t zone) const {
        const uint8_t across = zone == 0 ? top : zone == 2 ? middle : zone == 4 ? bottom : 0;
        const uint8_t uprights = zone < 2 ? upper_pair : zone == 2 ? left | right : lower_pair;
        if ((some & across) != 0) {
            return Columns{0, width};
        }
        some = byte(some & uprights);
        Columns columns{0, 0};
        if ((some & right) != 0) {
            columns = Columns{byte(static_cast<unsigned>(width) - stroke), width};
        }
        if ((some & left) != 0) {
            columns.from = 0;
            columns.to = columns.to == 0 ? stroke : width;
        }
        return columns;
    }
    /// The first row below `y` that may look otherwise: where uprights alone are cut, rows are alike.
    uint8_t row_below(uint8_t y) const {
        const uint8_t middle_row = top_of(2), bottom_row = top_of(4);
        if (glyph > segment_glyph::minus || y < stroke) {
            return byte(y + 1u);
        }
        if (y < middle_row) {
            return middle_row;
        }
        return y >= top_of(3) && y < bottom_row ? bottom_row : byte(y + 1u);
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
        upper_pair = upper_left | upper_right,
        lower_pair = lower_left | lower_right,
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

    // A row of a digit. On each side of the cell: columns before the upright, of it, and after it; then the bar
    // across, if the row cuts one.
    struct Cut {
        uint8_t before, inked, after, across;
        bool upper;
        uint8_t left() const { return upper ? upper_left : lower_left; }
        uint8_t right() const { return upper ? upper_right : lower_right; }
    };

    Cut cut(uint8_t y) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t middle_row = byte((static_cast<unsigned>(height) - stroke) / 2u);
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
        return Cut{before, inked, after, across, upper};
    }

    // Ink from <= column < to; it may go on from what is there. Returns the place behind.
    static uint8_t* append(Edges& row, uint8_t* edge, uint8_t from, uint8_t to) {
        if (edge != row.at && edge[-1] == from) {
            --edge;
        } else {
            *edge++ = from;
        }
        *edge++ = to;
        return edge;
    }

    // Whether the row of a point or a colon has ink.
    bool is_dot(uint8_t y) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t third = byte(height / 3u);
        return glyph == segment_glyph::point
                   ? from_below < stroke
                   : (y >= third && y - third < stroke) ||
                         (from_below >= third && from_below - third < stroke);
    }
};

}  // namespace dialplate

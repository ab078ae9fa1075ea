// A box with lines of text in it, square or with round corners, edged or not: keys, lamps and legends.
#pragma once

#include "ui/geometry.hpp"
#include "ui/pen.hpp"

#include <stdint.h>

namespace dialplate {

struct BoxStyle {
    uint8_t radius, edge;
    uint16_t ink, fill, edge_colour;
    uint16_t behind;  ///< What shows outside round corners.
};

/// How far a quarter circle of radius `r` leaves row `y` of its square empty: the first column whose
/// pixel centre lies in the circle of radius `inner` around (r, r). y < r.
inline uint8_t corner_inset(uint8_t r, uint8_t inner, uint8_t y) {
    const uint16_t down = word(2u * (static_cast<uint32_t>(r) - y) - 1u);
    const uint16_t limit = word(4u * static_cast<uint32_t>(inner) * inner);
    uint8_t x = byte(static_cast<uint32_t>(r) - inner);
    for (; x < r; ++x) {
        const uint16_t across = word(2u * (static_cast<uint32_t>(r) - x) - 1u);
        if (static_cast<uint32_t>(across) * across + static_cast<uint32_t>(down) * down <= limit) {
            break;
        }
    }
    return x;
}

/// The empty box: hands out bands of its rows, any range of columns.
template <class Bus, class Parts>
class BoxShape {
public:
    BoxShape(Pen<Bus, Parts>& pen, Rect r, const BoxStyle& style)
        : pen_(pen), r_(r), style_(style) {}

    /// A piece: rows and columns of `part`, relative to the box; a band of rows a slice.
    void draw(Rect part) {
        if (part.w == 0 || part.h == 0 || !pen_.pieces.mine()) {
            return;
        }
        const uint16_t done = pen_.pieces.row();
        const uint16_t rows =
            smaller(pen_.band_rows(part.w), word(part.h - static_cast<uint32_t>(done)));
        const uint16_t first = word(static_cast<uint32_t>(part.y) + done);
        pen_.bus().window(word(static_cast<uint32_t>(r_.x) + part.x),
                          word(static_cast<uint32_t>(r_.y) + first),
                          part.w,
                          rows);
        for (uint16_t i = 0; i < rows; ++i) {
            row(word(static_cast<uint32_t>(first) + i),
                part.x,
                word(static_cast<uint32_t>(part.x) + part.w));
        }
        pen_.pieces.drawn_rows(rows, part.h);
    }

private:
    void row(uint16_t y, uint16_t from, uint16_t to) {
        const uint16_t up = word(r_.h - 1u - y);
        const uint16_t from_end = smaller(y, up);  // rows to the nearer of top and bottom
        uint16_t outer = 0;
        uint16_t inner = style_.edge;
        if (Parts::rounded && from_end < style_.radius) {
            outer = corner_inset(style_.radius, style_.radius, byte(from_end));
            if (style_.edge < style_.radius) {
                inner = corner_inset(style_.radius,
                                     byte(static_cast<uint32_t>(style_.radius) - style_.edge),
                                     byte(from_end));
            }
        }
        if (from_end < style_.edge) {
            inner = word(r_.w - static_cast<uint32_t>(outer));  // the edge runs right across
        }
        inner = greater(inner, outer);
        const uint16_t far_inner =
            from_end < style_.edge ? inner : word(r_.w - static_cast<uint32_t>(inner));
        uint16_t x = from;
        run(x, smaller(to, outer), style_.behind);
        run(x, smaller(to, inner), style_.edge_colour);
        run(x, smaller(to, far_inner), style_.fill);
        run(x, smaller(to, word(r_.w - static_cast<uint32_t>(outer))), style_.edge_colour);
        run(x, to, style_.behind);
    }
    void run(uint16_t& x, uint16_t until, uint16_t colour) {
        if (until > x) {
            pen_.bus().push(colour, word(until - static_cast<uint32_t>(x)));
            x = until;
        }
    }

    Pen<Bus, Parts>& pen_;
    const Rect r_;
    const BoxStyle& style_;
};

/// Names the glyphs of a text as pieces. Returns the column after it, from `at.x`.
template <class Bus, class Parts>
uint16_t draw_text(
    Pen<Bus, Parts>& pen, Point at, uint16_t face_at, uint16_t text, Colours colours) {
    const uint8_t count = pen.rom.u8(text);
    for (uint8_t i = 0; i < count; ++i) {
        at.x = word(static_cast<uint32_t>(at.x) +
                    pen.glyph(at, face_at, pen.rom.u8(word(text + 1u + i)), colours));
    }
    return at.x;
}

/// A box and `count` lines of text, each a point and a text in the image at `lines`; top to bottom, not
/// overlapping, inside the edge.
template <class Bus, class Parts>
void draw_box(Pen<Bus, Parts>& pen,
              Rect r,
              const BoxStyle& style,
              uint8_t face,
              Reader lines,
              uint8_t count) {
    BoxShape<Bus, Parts> shape(pen, r, style);
    const uint16_t face_at = count != 0 ? pen.face_at(face) : uint16_t{0};
    const uint16_t line_height = count != 0 ? pen.height(face_at) : uint16_t{0};
    uint16_t y = 0;
    for (; count != 0; --count) {
        const Point at = read_point(lines);
        const uint16_t text = lines.u16();
        const uint16_t below = word(static_cast<uint32_t>(at.y) + line_height);
        shape.draw(Rect{0, y, r.w, word(at.y - static_cast<uint32_t>(y))});
        shape.draw(Rect{0, at.y, at.x, line_height});
        const Point on_glass{word(static_cast<uint32_t>(r.x) + at.x),
                             word(static_cast<uint32_t>(r.y) + at.y)};
        const uint16_t end =
            draw_text(pen, on_glass, face_at, text, Colours{style.ink, style.fill});
        const uint16_t x = word(end - static_cast<uint32_t>(r.x));
        shape.draw(Rect{x, at.y, word(r.w - static_cast<uint32_t>(x)), line_height});
        y = below;
    }
    shape.draw(Rect{0, y, r.w, word(r.h - static_cast<uint32_t>(y))});
}

}  // namespace dialplate

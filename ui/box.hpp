// Box: lines of text in a box, square or with round corners, edged or not. A key in one of four states, or
// a lamp, which is a box that no finger moves: lit while a value is at its place, or in a choice's words.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/pen.hpp"
#include "ui/values.hpp"

#include <stdint.h>

namespace dialplate {

enum class BoxState : uint8_t { idle, active, pressed, disabled };

/// How far a quarter circle of radius `inner` around (r, r) leaves row `y` of its square empty: the first
/// column whose pixel centre lies in it. y < r, inner <= r <= 127.
__attribute__((noinline)) inline uint8_t corner_inset(uint8_t r, uint8_t inner, uint8_t y) {
    // Twice the distances, so that pixel centres are whole numbers.
    const uint16_t down = word(2u * (static_cast<unsigned>(r) - y) - 1u);
    const uint16_t limit = word(4u * inner * inner);
    uint8_t x = byte(static_cast<unsigned>(r) - inner);
    for (; x < r; ++x) {
        const uint16_t across = word(2u * (static_cast<unsigned>(r) - x) - 1u);
        if (word(static_cast<unsigned>(across) * across + static_cast<unsigned>(down) * down) <=
            limit) {
            break;
        }
    }
    return x;
}

template <class Bus, class Parts>
struct BoxArt {
    using Brush = Pen<Bus, Parts>;
    using State = Values<typename Brush::Image>;

    static constexpr uint8_t shown_bytes = 1;

    /// The rules of a box, behind its fixed fields.
    struct Manner {
        uint8_t flags;
        bool active, enabled;
        uint8_t tap_page, hold_page;  ///< Valid when the flags say so.
        uint8_t choice;               ///< With the flag `words`: the one to show.
        uint16_t lines;               ///< Place of the count of lines.
    };

    __attribute__((noinline)) static Manner manner(const Brush& pen,
                                                   const State& values,
                                                   uint16_t item) {
        const auto& rom = pen.rom;
        uint16_t at = word(item + box::rest);
        Manner m{rom.u8(word(item + box::flags)), false, true, 0, 0, 0, 0};
        if (Parts::words && (m.flags & box::words)) {
            m.choice = static_cast<uint8_t>(values.get(rom.u8(at++)));
        }
        if (m.flags & box::active) {
            const uint8_t value = rom.u8(at++);
            const uint8_t bytes = values.state_bytes(value);
            m.active =
                values.get(value) == (bytes == 1 ? static_cast<int32_t>(rom.u8(at)) : rom.i32(at));
            at = word(at + bytes);
        }
        if (Parts::touch && (m.flags & box::enabled_by)) {
            m.enabled = values.get(rom.u8(at++)) != 0;
        }
        if (Parts::pages && (m.flags & box::tap_page)) {
            m.tap_page = rom.u8(at++);
        }
        if (Parts::pages && (m.flags & box::hold_page)) {
            m.hold_page = rom.u8(at++);
        }
        m.lines = at;
        return m;
    }

    /// What decides how it looks: its state, or with the flag `words` the choice.
    static uint8_t state(const Brush& pen, const State& values, uint16_t item, bool pressed) {
        const Manner m = manner(pen, values, item);
        if (Parts::words && (m.flags & box::words)) {
            return m.choice;
        }
        return static_cast<uint8_t>(!m.enabled ? BoxState::disabled
                                    : pressed  ? BoxState::pressed
                                    : m.active ? BoxState::active
                                               : BoxState::idle);
    }

    __attribute__((noinline)) static void draw(Brush& pen,
                                               const State& values,
                                               uint16_t item,
                                               uint8_t state) {
        const auto& rom = pen.rom;
        const Manner m = manner(pen, values, item);
        const bool in_words = Parts::words && (m.flags & box::words);
        const uint16_t tone =
            word(rom.u16(header::at_tones) +
                 tone_bytes * static_cast<unsigned>(
                                  byte(rom.u8(word(item + box::tones)) + (in_words ? 0u : state))));
        Shape shape{pen,
                    read_rect(rom, word(item + item::place)),
                    rom.u8(word(item + box::radius)),
                    rom.u8(word(item + box::edge)),
                    pen.colour_at(word(tone + 1u)),
                    pen.colour_at(word(tone + 2u)),
                    pen.colour_at(word(item + box::behind))};
        uint8_t lines = rom.u8(m.lines);
        uint16_t line = word(m.lines + 1u);
        if (in_words) {
            const bool known = state < lines;
            line = word(line + (point_bytes + 2u) * (known ? state : 0u));
            lines = known ? 1 : 0;
        }
        const uint16_t face_at = pen.face_at(rom.u8(word(item + box::face)));
        const Colours colours{pen.colour_at(tone), shape.fill};
        uint16_t y = 0;
        for (; lines != 0; --lines) {
            const Point at = read_point(rom, line);
            const uint16_t height = pen.height(face_at);
            shape.part(0, y, shape.r.w, at.y);
            y = word(at.y + height);
            shape.part(0, at.y, at.x, y);
            const uint16_t end = draw_text(pen,
                                           Point{word(shape.r.x + at.x), word(shape.r.y + at.y)},
                                           face_at,
                                           rom.u16(word(line + point_bytes)),
                                           colours);
            shape.part(word(end - shape.r.x), at.y, shape.r.w, y);
            line = word(line + point_bytes + 2u);
        }
        shape.part(0, y, shape.r.w, shape.r.h);
    }

    /// Names the glyphs of a text as pieces. Returns the column after it.
    __attribute__((noinline)) static uint16_t draw_text(
        Brush& pen, Point at, uint16_t face_at, uint16_t text, Colours colours) {
        for (uint8_t count = pen.rom.u8(text); count != 0; --count) {
            const uint8_t number = pen.rom.u8(++text);
            pen.glyph(at, face_at, number, colours);
            at.x = word(at.x + pen.advance(face_at, number));
        }
        return at.x;
    }

private:
    // The box without its text: hands out any part of it.
    struct Shape {
        Brush& pen;
        const Rect r;
        const uint8_t radius, edge;
        const uint16_t fill, edge_colour;
        const uint16_t behind;  // what shows outside round corners

        // A piece: columns from..to and rows top..below of the box; a band of rows a slice.
        __attribute__((noinline)) void part(uint16_t from,
                                            uint16_t top,
                                            uint16_t to,
                                            uint16_t below) {
            Rect band{word(r.x + from), word(r.y + top), word(to - from), word(below - top)};
            if (!pen.open_band(band)) {
                return;
            }
            for (uint16_t y = word(band.y - r.y); band.h != 0; --band.h, ++y) {
                row(y, from, to);
            }
        }

        void row(uint16_t y, uint16_t from, uint16_t to) {
            const uint16_t end_row =
                smaller(y, word(r.h - 1u - y));  // rows to the nearer of top and bottom
            uint16_t outer = 0, inner = edge;
            if (Parts::rounded && end_row < radius) {
                outer = corner_inset(radius, radius, byte(end_row));
                if (edge < radius) {
                    inner = corner_inset(
                        radius, byte(static_cast<unsigned>(radius) - edge), byte(end_row));
                }
                inner = greater(inner, outer);
            }
            const bool across = end_row < edge;  // the edge runs right across
            uint16_t x = from;
            if (Parts::rounded) {
                run(x, to, outer, behind);
            }
            run(x, to, inner, edge_colour);
            run(x, to, word(r.w - inner), across ? edge_colour : fill);
            run(x, to, word(r.w - outer), edge_colour);
            if (Parts::rounded) {
                run(x, to, r.w, behind);
            }
        }
        __attribute__((noinline)) void run(uint16_t& x,
                                           uint16_t to,
                                           uint16_t until,
                                           uint16_t colour) {
            until = smaller(until, to);
            if (until > x) {
                pen.bus().push(colour, word(until - x));
                x = until;
            }
        }
    };
};

}  // namespace dialplate

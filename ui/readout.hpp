// Readout: a number in groups of digits, each digit in a cell of its own, so that only digits that differ
// are sent and nothing dances.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct ReadoutArt {
    static constexpr uint8_t shown_bytes = Parts::tuning_digit ? 5 : 4;

    /// The fixed part of a readout, as stored.
    struct Form {
        uint8_t value, face, ink, ground;
        Point cells_at;
        uint8_t drop, least, zero, minus, flags;
        uint8_t gap, thickness;  // of the underline
        uint8_t unit_face, unit_ink;
        Point unit_at;
        uint16_t unit_text;
        uint8_t count;
        uint16_t cells;  // place of the first
        bool underlined() const { return (flags & readout_flag::tuning) != 0 && thickness != 0; }
    };

    static bool differs(Reader from, const Values& values, const uint8_t* shown) {
        uint8_t mark = none;
        const Form form = read(from, values, mark);
        return values.get(form.value) != Values::load_number(shown) ||
               (Parts::tuning_digit && mark != shown[4]);
    }

    /// Which cells differ between what is shown and what is wanted: one bit each, from the left.
    static void begin(
        Reader from, const Rom& rom, const Values& values, const uint8_t* shown, Job& job) {
        const Form form = read(from, values, job.mark);
        job.target = values.get(form.value);
        if (job.whole) {
            job.cells = 0xFFFF;
            return;
        }
        job.cells = 0;
        const int32_t old_number = Values::load_number(shown);
        uint32_t was = magnitude(old_number, form.drop), is = magnitude(job.target, form.drop);
        uint16_t bit = word(1ul << (form.count - 1u));
        for (uint8_t i = form.count; i-- != 0; bit = word(static_cast<uint32_t>(bit) >> 1)) {
            const uint8_t cell = rom.u8(word(static_cast<uint32_t>(form.cells) + i));
            bool changed = false;
            if (cell < 10) {
                changed = is != was &&
                          (is % 10 != was % 10 || blank(is, cell, form) != blank(was, cell, form));
                if (Parts::tuning_digit && !form.underlined() && job.mark != shown[4]) {
                    changed = changed || cell == job.mark || cell == shown[4];
                }
                is /= 10;
                was /= 10;
            } else if (cell == readout_cell::sign) {
                changed = (old_number < 0) != (job.target < 0);
            } else {
                // A separator is blank when the digit to its left is.
                const uint8_t left = i == 0 ? uint8_t{0} : rom.u8(word(form.cells + i - 1u));
                changed = blank(is, left, form) != blank(was, left, form);
            }
            if (changed) {
                job.cells = word(static_cast<uint32_t>(job.cells) | bit);
            }
        }
    }

    static void draw(Pen<Bus, Parts>& pen,
                     Rect r,
                     Reader from,
                     const Values& values,
                     const uint8_t* shown,
                     const Job& job) {
        uint8_t mark_now = none;
        const Form form = read(from, values, mark_now);
        const uint16_t ground = pen.colour(form.ground);
        const uint16_t face_at = pen.face_at(form.face);
        const uint16_t rows = pen.height(face_at);
        const uint16_t top = word(static_cast<uint32_t>(r.y) + form.cells_at.y);
        const uint16_t below = word(static_cast<uint32_t>(top) + rows);
        const uint16_t left = word(static_cast<uint32_t>(r.x) + form.cells_at.x);
        const uint16_t right = word(static_cast<uint32_t>(r.x) + r.w);
        if (job.whole) {
            pen.fill(Rect{r.x, r.y, r.w, form.cells_at.y}, ground);
            pen.fill(Rect{r.x, top, form.cells_at.x, rows}, ground);
        }
        const uint16_t end = draw_cells(pen, form, Point{left, top}, face_at, job);
        if (job.whole) {
            draw_unit(pen,
                      form,
                      r,
                      Rect{end, top, word(right - static_cast<uint32_t>(end)), rows},
                      ground);
        }
        uint16_t drawn_to = below;
        if (Parts::tuning_digit && form.underlined()) {
            drawn_to = draw_underline(pen, form, r, Point{left, below}, face_at, shown, job);
        }
        if (job.whole) {
            pen.fill(Rect{r.x, drawn_to, r.w, word(static_cast<uint32_t>(r.y) + r.h - drawn_to)},
                     ground);
        }
    }

    static void commit(const Job& job, uint8_t* shown) {
        Values::store_number(shown, job.target);
        if (Parts::tuning_digit) {
            shown[4] = job.mark;
        }
    }

private:
    static uint32_t magnitude(int32_t number, uint8_t drop) {
        uint32_t m =
            number < 0 ? 0u - static_cast<uint32_t>(number) : static_cast<uint32_t>(number);
        for (; drop != 0; --drop) {
            m /= 10;
        }
        return m;
    }
    // `rest`: the number without its digits below this one.
    static bool blank(uint32_t rest, uint8_t digit, const Form& form) {
        return rest == 0 && digit >= form.least;
    }

    static Form read(Reader& from, const Values& values, uint8_t& mark) {
        Form form{};
        form.value = from.u8();
        form.face = from.u8();
        form.ink = from.u8();
        form.ground = from.u8();
        form.cells_at = read_point(from);
        form.drop = from.u8();
        form.least = from.u8();
        form.zero = from.u8();
        form.minus = from.u8();
        form.flags = from.u8();
        mark = none;
        if (Parts::tuning_digit && (form.flags & readout_flag::tuning)) {
            mark = read_mark(from, values, form);
        }
        if (form.flags & readout_flag::unit) {
            form.unit_face = from.u8();
            form.unit_ink = from.u8();
            form.unit_at = read_point(from);
            form.unit_text = from.u16();
        }
        form.count = from.u8();
        form.cells = from.at();
        return form;
    }

    static uint8_t read_mark(Reader& from, const Values& values, Form& form) {
        int32_t step = values.get(from.u8());
        form.gap = from.u8();
        form.thickness = from.u8();
        const uint8_t count = from.u8();
        uint8_t mark = none;
        for (uint8_t i = 0; i < count; ++i) {
            const uint8_t digit = from.u8();
            if (i == step) {
                mark = digit;
            }
        }
        if (count == 0 && step > 0) {
            mark = 0;
            for (; step >= 10; step /= 10) {
                ++mark;
            }
            mark = mark < form.drop ? none : byte(static_cast<uint32_t>(mark) - form.drop);
        }
        return mark;
    }

    static uint16_t cell_width(const Pen<Bus, Parts>& pen, uint16_t face_at, uint8_t cell) {
        return cell <= readout_cell::sign ? pen.digit_advance(face_at)
                                          : pen.advance(face_at, byte(cell & 127u));
    }

    static uint16_t draw_cells(
        Pen<Bus, Parts>& pen, const Form& form, Point at, uint16_t face_at, const Job& job) {
        const uint16_t ink = pen.colour(form.ink), ground = pen.colour(form.ground);
        uint16_t bit = 1;
        for (uint8_t i = 0; i < form.count; ++i, bit = word(static_cast<uint32_t>(bit) << 1)) {
            const uint8_t cell = pen.rom.u8(word(static_cast<uint32_t>(form.cells) + i));
            const uint16_t columns = cell_width(pen, face_at, cell);
            if (job.cells & bit) {
                const bool inverted = Parts::tuning_digit && !form.underlined() && cell == job.mark;
                const Colours colours = inverted ? Colours{ground, ink} : Colours{ink, ground};
                const uint8_t glyph = glyph_of(pen.rom, form, job.target, i, cell);
                if (glyph == none) {
                    pen.fill(Rect{at.x, at.y, columns, pen.height(face_at)}, colours.ground);
                } else {
                    pen.glyph(at, face_at, glyph, colours);
                }
            }
            at.x = word(static_cast<uint32_t>(at.x) + columns);
        }
        return at.x;
    }

    // The glyph that cell `i` shows; 255: none.
    static uint8_t glyph_of(
        const Rom& rom, const Form& form, int32_t number, uint8_t i, uint8_t cell) {
        if (cell == readout_cell::sign) {
            return number < 0 ? form.minus : none;
        }
        const bool digit = cell < 10;
        const uint8_t place = digit    ? cell
                              : i == 0 ? uint8_t{0}
                                       : rom.u8(word(form.cells + i - 1u));
        const uint32_t rest = magnitude(number, byte(static_cast<uint32_t>(form.drop) + place));
        if (blank(rest, place, form)) {
            return none;
        }
        return digit ? byte(form.zero + rest % 10) : byte(cell & 127u);
    }

    // Right of the cells: blank, or the unit on its own rows.
    static void draw_unit(
        Pen<Bus, Parts>& pen, const Form& form, Rect r, Rect room, uint16_t ground) {
        if ((form.flags & readout_flag::unit) == 0) {
            pen.fill(room, ground);
            return;
        }
        const uint16_t x = word(static_cast<uint32_t>(r.x) + form.unit_at.x);
        const uint16_t y = word(static_cast<uint32_t>(r.y) + form.unit_at.y);
        const uint16_t unit_face = pen.face_at(form.unit_face);
        const uint16_t below = word(static_cast<uint32_t>(y) + pen.height(unit_face));
        const uint16_t width = word(static_cast<uint32_t>(room.x) + room.w - x);
        pen.fill(Rect{room.x, room.y, word(x - static_cast<uint32_t>(room.x)), room.h}, ground);
        pen.fill(Rect{x, room.y, width, word(y - static_cast<uint32_t>(room.y))}, ground);
        const uint16_t end = draw_text(pen,
                                       Point{x, y},
                                       unit_face,
                                       form.unit_text,
                                       Colours{pen.colour(form.unit_ink), ground});
        pen.fill(Rect{end,
                      y,
                      word(static_cast<uint32_t>(x) + width - end),
                      word(below - static_cast<uint32_t>(y))},
                 ground);
        pen.fill(Rect{x, below, width, word(static_cast<uint32_t>(room.y) + room.h - below)},
                 ground);
    }

    // The rows under the digits where one of them is marked. Returns the row below.
    static uint16_t draw_underline(Pen<Bus, Parts>& pen,
                                   const Form& form,
                                   Rect r,
                                   Point at,
                                   uint16_t face_at,
                                   const uint8_t* shown,
                                   const Job& job) {
        const uint16_t ink = pen.colour(form.ink), ground = pen.colour(form.ground);
        const uint16_t y = word(static_cast<uint32_t>(at.y) + form.gap);
        if (job.whole) {
            pen.fill(Rect{r.x, at.y, r.w, form.gap}, ground);
            pen.fill(Rect{r.x, y, word(at.x - static_cast<uint32_t>(r.x)), form.thickness}, ground);
        }
        uint16_t x = at.x;
        for (uint8_t i = 0; i < form.count; ++i) {
            const uint8_t cell = pen.rom.u8(word(static_cast<uint32_t>(form.cells) + i));
            const uint16_t columns = cell_width(pen, face_at, cell);
            const bool marked = cell == job.mark;
            if (job.whole || (job.mark != shown[4] && (marked || cell == shown[4]))) {
                pen.fill(Rect{x, y, columns, form.thickness}, marked ? ink : ground);
            }
            x = word(static_cast<uint32_t>(x) + columns);
        }
        if (job.whole) {
            pen.fill(Rect{x, y, word(static_cast<uint32_t>(r.x) + r.w - x), form.thickness},
                     ground);
        }
        return word(static_cast<uint32_t>(y) + form.thickness);
    }
};

}  // namespace dialplate

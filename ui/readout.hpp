// Readout: a number in groups of digits, each digit in a cell of its own, so that only digits that differ
// are sent and nothing dances. What never changes, its ground and its unit, belongs to the page.
#pragma once

#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/pen.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct ReadoutArt {
    using Brush = Pen<Bus, Parts>;
    using State = Values<typename Brush::Image>;
    using Image = typename Brush::Image;

    // The number; and which digit is marked.
    static constexpr uint8_t shown_bytes = Parts::tuning_digit ? 5 : 4;

    static bool differs(const Image& rom, const State& values, Spot item) {
        return values.get(rom.u8(word(item.at + readout::value))) !=
                   State::load_number(item.shown) ||
               (Parts::tuning_digit && marked_digit(rom, values, item.at) != item.shown[4]);
    }

    /// Notes which cells differ between what is shown and what is wanted: one bit each, from the left.
    __attribute__((noinline)) static void begin(const Image& rom,
                                                const State& values,
                                                Spot item,
                                                Job& job) {
        job.target = values.get(rom.u8(word(item.at + readout::value)));
        job.mark = marked_digit(rom, values, item.at);
        job.cells = 0xFFFF;
        if (job.whole) {
            return;
        }
        const Cells form{rom, item.at};
        const int32_t shown = State::load_number(item.shown);
        // From the right, both numbers lose a digit at a time; when they have become equal nothing
        // further left can differ.
        uint32_t is = form.magnitude(job.target, 0), was = form.magnitude(shown, 0);
        uint16_t bit = word(1u << (form.count() - 1u));
        job.cells = 0;
        for (uint8_t i = form.count(); i-- != 0; bit = static_cast<uint16_t>(bit >> 1)) {
            const uint8_t cell = form.cell(i);
            bool changed = false;
            if (cell == readout::sign_cell) {
                changed = Parts::sign && (shown < 0) != (job.target < 0);
            } else {
                const uint8_t digit = form.digit_of(i);
                changed = form.blank(is, digit) != form.blank(was, digit);
                if (cell == digit) {
                    if (is != was) {
                        changed = (take_digit(is) != take_digit(was)) || changed;
                    }
                    if (Parts::tuning_digit && form.inverts() && job.mark != item.shown[4]) {
                        changed = changed || cell == job.mark || cell == item.shown[4];
                    }
                }
            }
            if (changed) {
                job.cells = static_cast<uint16_t>(job.cells | bit);
            }
        }
    }

    static void commit(const Job& job, uint8_t* shown) {
        State::store_number(shown, job.target);
        if (Parts::tuning_digit) {
            shown[4] = job.mark;
        }
    }

    /// Sends the cells that differ, and forgets each as it is drawn; then the marks.
    __attribute__((noinline)) static void draw(Brush& pen, Spot item, Job& job) {
        const Image& rom = pen.rom;
        const Cells form{rom, item.at};
        const uint16_t face_at = pen.face_at(rom.u8(word(item.at + readout::face)));
        const Colours colours{pen.colour_at(word(item.at + readout::ink)),
                              pen.colour_at(word(item.at + readout::ground))};
        const uint16_t rows = pen.height(face_at);
        const uint8_t count = form.count();
        Point at = read_point(rom, word(item.at + item::place));
        const uint16_t start = at.x;
        uint16_t bit = 1;
        for (uint8_t i = 0; job.cells != 0 && i < count;
             ++i, bit = static_cast<uint16_t>(bit << 1)) {
            const uint16_t columns = cell_columns(pen, face_at, form.cell(i));
            if (job.cells & bit) {
                const bool invert =
                    Parts::tuning_digit && form.cell(i) == job.mark && form.inverts();
                const Colours in = invert ? Colours{colours.ground, colours.ink} : colours;
                const uint8_t glyph = form.glyph(job.target, i);
                pen.pieces.go_straight_to_it();
                if (glyph == none) {
                    pen.fill(Rect{at.x, at.y, columns, rows}, in.ground);
                } else {
                    pen.glyph(at, face_at, glyph, in);
                }
                if (!pen.pieces.went()) {
                    return;
                }
                job.cells = static_cast<uint16_t>(job.cells & ~bit);
                pen.pieces.start();
            }
            at.x = word(at.x + columns);
        }
        if (!Parts::tuning_digit || !(job.whole || job.mark != item.shown[4])) {
            return;
        }
        at.x = start;
        pen.pieces.name_again();
        for (uint8_t i = 0; i < count; ++i) {
            const uint8_t cell = form.cell(i);
            const uint16_t columns = cell_columns(pen, face_at, cell);
            const bool marked = cell == job.mark;
            if (job.whole || marked || cell == item.shown[4]) {
                // A line under the marked digit, or the rows that an inverted cell is higher.
                const uint8_t thick = rom.u8(word(item.at + readout::thickness));
                const uint16_t under = word(at.y + rows + rom.u8(word(item.at + readout::gap)));
                const uint16_t paint = marked ? colours.ink : colours.ground;
                pen.fill(Rect{at.x, under, columns, thick}, paint);
                if (form.inverts()) {
                    pen.fill(Rect{at.x, word(at.y - thick), columns, thick}, paint);
                }
            }
            at.x = word(at.x + columns);
        }
    }

private:
    struct Cells {
        const Image& rom;
        uint16_t item;

        uint8_t field(uint8_t which) const { return rom.u8(word(item + which)); }
        uint8_t count() const { return field(readout::count); }
        uint8_t cell(uint8_t i) const { return field(byte(readout::cells + i)); }
        // Cell `i`'s own digit (n of 10^n), or of a separator the digit to its left.
        uint8_t digit_of(uint8_t i) const {
            const uint8_t c = cell(i);
            return c < readout::separator_cell || i == 0 ? c : cell(byte(i - 1u));
        }
        bool inverts() const { return field(readout::gap) == 0; }
        // `rest`: the number without its digits below this one.
        bool blank(uint32_t rest, uint8_t digit) const {
            return rest == 0 && digit >= field(readout::least);
        }

        // The number without the digits that are not shown and without those below `digit`.
        __attribute__((noinline)) uint32_t magnitude(int32_t number, uint8_t digit) const {
            uint32_t m = static_cast<uint32_t>(number);
            if (Parts::sign && number < 0) {
                m = 0u - m;
            }
            for (digit = byte(static_cast<unsigned>(digit) + field(readout::drop)); digit != 0;
                 --digit) {
                take_digit(m);
            }
            return m;
        }

        // The glyph that cell `i` shows; 255: none.
        uint8_t glyph(int32_t number, uint8_t i) const {
            const uint8_t c = cell(i);
            if (c == readout::sign_cell) {
                return Parts::sign && number < 0 ? field(readout::minus) : none;
            }
            const uint8_t digit = digit_of(i);
            uint32_t rest = magnitude(number, digit);
            if (blank(rest, digit)) {
                return none;
            }
            return c < readout::separator_cell
                       ? byte(static_cast<unsigned>(field(readout::zero)) + take_digit(rest))
                       : byte(c & 127u);
        }
    };

    static uint16_t cell_columns(const Brush& pen, uint16_t face_at, uint8_t cell) {
        return cell < readout::separator_cell ? pen.digit_advance(face_at)
                                              : pen.advance(face_at, byte(cell & 127u));
    }

    // The digit that the tuning knob turns; 255: none is marked.
    static uint8_t marked_digit(const Image& rom, const State& values, uint16_t item) {
        const uint8_t value = rom.u8(word(item + readout::tuning));
        if (!Parts::tuning_digit || value == none) {
            return none;
        }
        int32_t step = values.get(value);
        const uint8_t choices = rom.u8(word(item + readout::choices));
        if (choices != 0) {
            const uint8_t digits =
                byte(readout::cells + static_cast<unsigned>(rom.u8(word(item + readout::count))));
            return step < choices ? rom.u8(word(item + digits + static_cast<uint8_t>(step))) : none;
        }
        uint8_t mark = byte(0u - rom.u8(word(item + readout::drop)));
        for (; step >= 10; step /= 10) {
            ++mark;
        }
        return mark;
    }
};

}  // namespace dialplate

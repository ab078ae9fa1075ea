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

    static void plan(const Image& rom, const State& values, uint16_t item, Job& job) {
        State::store_number(job.next, values.get(rom.u8(word(item + readout::value))));
        if (Parts::tuning_digit) {
            job.next[4] = marked_digit(rom, values, item);
        }
    }

    /// Notes which cells and marks differ from what is shown: a bit each, from the left.
    __attribute__((noinline)) static void begin(const Image& rom, Spot item, Job& job) {
        job.cells = 0xFFFF;
        job.marks = 0xFFFF;
        const Cells form{rom, item.at};
        form.glyphs(State::load_number(job.next), job.glyphs);
        if (job.whole) {
            return;
        }
        uint8_t was[readout::most_cells];
        form.glyphs(State::load_number(item.shown), was);
        job.cells = 0;
        job.marks = 0;
        uint16_t bit = 1;
        for (uint8_t i = 0; i < form.count(); ++i, bit = static_cast<uint16_t>(bit << 1)) {
            bool changed = job.glyphs[i] != was[i];
            if (Parts::tuning_digit && job.next[4] != item.shown[4]) {
                const uint8_t cell = form.cell(i);
                if (cell == job.next[4] || cell == item.shown[4]) {
                    job.marks = static_cast<uint16_t>(job.marks | bit);
                    changed = changed || form.inverts();
                }
            }
            if (changed) {
                job.cells = static_cast<uint16_t>(job.cells | bit);
            }
        }
    }

    /// Sends the cells and marks that differ, and forgets each cell as it is drawn.
    __attribute__((noinline)) static void draw(Brush& pen, Spot item, Job& job) {
        if ((job.cells | job.marks) == 0) {
            return;
        }
        const Image& rom = pen.rom;
        const Cells form{rom, item.at};
        const uint16_t face_at = pen.face_at(form.field(readout::face));
        const Colours colours{pen.colour_at(word(item.at + readout::ink)),
                              pen.colour_at(word(item.at + readout::ground))};
        const uint16_t rows = pen.height(face_at);
        Point at = read_point(rom, word(item.at + item::place));
        uint8_t was[readout::most_cells];
        const bool by_runs = !job.whole && pen.has_changed_runs(face_at);
        if (by_runs) {
            form.glyphs(State::load_number(item.shown), was);
        }
        uint16_t bit = 1;
        for (uint8_t i = 0; i < form.count(); ++i, bit = static_cast<uint16_t>(bit << 1)) {
            const uint8_t cell = form.cell(i);
            const uint16_t columns = cell < readout::separator_cell
                                         ? pen.digit_advance(face_at)
                                         : pen.advance(face_at, byte(cell & 127u));
            const bool marked = Parts::tuning_digit && cell == job.next[4];
            if ((job.cells | job.marks) & bit) {
                pen.pieces.name_again();
                if (job.cells & bit) {
                    const bool invert = marked && form.inverts();
                    const Colours in = invert ? Colours{colours.ground, colours.ink} : colours;
                    if (job.glyphs[i] == none) {
                        pen.fill(Rect{at.x, at.y, columns, rows}, in.ground);
                    } else if (by_runs && is_digit(cell) && was[i] != none &&
                               !(form.inverts() && (job.marks & bit))) {
                        pen.change(at, face_at, was[i], job.glyphs[i], in);
                    } else {
                        pen.glyph(at, face_at, job.glyphs[i], in);
                    }
                }
                if (Parts::tuning_digit && (job.marks & bit)) {
                    // A line under the marked digit, or the rows that an inverted cell is higher.
                    const uint8_t thick = form.field(readout::thickness);
                    const uint16_t paint = marked ? colours.ink : colours.ground;
                    pen.fill(
                        Rect{at.x, word(at.y + rows + form.field(readout::gap)), columns, thick},
                        paint);
                    if (form.inverts()) {
                        pen.fill(Rect{at.x, word(at.y - thick), columns, thick}, paint);
                    }
                }
                if (!pen.pieces.went()) {
                    return;
                }
                pen.pieces.start();
                job.cells = static_cast<uint16_t>(job.cells & ~bit);
                job.marks = static_cast<uint16_t>(job.marks & ~bit);
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
        bool inverts() const { return field(readout::gap) == 0; }

        /// What each cell shows: a glyph, or none. From the right, the number loses a digit at a time; a
        /// digit that has nothing but zeros left is blank, and so is the separator to its right.
        /// @param out  As many as there are cells.
        __attribute__((noinline)) void glyphs(int32_t number, uint8_t* out) const {
            uint32_t rest = static_cast<uint32_t>(number);
            if (Parts::sign && number < 0) {
                rest = 0u - rest;
            }
            for (uint8_t dropped = field(readout::drop); dropped != 0; --dropped) {
                take_digit(rest);
            }
            const uint8_t least = field(readout::least);
            for (uint8_t i = count(); i-- != 0;) {
                const uint8_t c = cell(i);
                const bool separator = c >= readout::separator_cell;
                uint8_t glyph = none;
                if (c == readout::sign_cell) {
                    if (Parts::sign && number < 0) {
                        glyph = field(readout::minus);
                    }
                } else if (rest != 0 || (separator ? cell(byte(i - 1u)) : c) < least) {
                    glyph =
                        separator
                            ? byte(c & 127u)
                            : byte(static_cast<unsigned>(field(readout::zero)) + take_digit(rest));
                }
                out[i] = glyph;
            }
        }
    };

    static bool is_digit(uint8_t cell) { return cell < readout::sign_cell; }
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

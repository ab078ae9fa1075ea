// Scale: a ruler of the tuning range. Either the tape moves under a fixed pointer, or the pointer moves.
//
// Everything counts in scale pixels: a value divided by the units that a pixel stands for. Ticks hang from
// the top edge, labels stand below them, and the pointer covers the rows of the ticks. The labels of a
// scale whose pointer moves never change and belong to the page.
#pragma once

#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/pen.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct ScaleArt {
    using Brush = Pen<Bus, Parts>;
    using State = Values<typename Brush::Image>;
    using Image = typename Brush::Image;

    static constexpr uint8_t shown_bytes = 4;  // scale pixel of the value
    static constexpr uint8_t half_pointer = 1;
    static constexpr uint8_t below_ticks = 2;  // blank rows between a major tick and its label

    static void plan(const Image& rom, const State& values, uint16_t item, Job& job) {
        State::store_number(job.next, position(rom, values, item));
    }

    static void begin(Job& job) {
        job.cells = 0;  // column up to which the row of labels is drawn
        job.marks = 0;  // glyphs of the label after it that are drawn
    }

    /// First the columns of ticks, then the row of labels. Each finds its place by itself: the turn of the
    /// pieces is the column, job.cells tells how far the labels are.
    __attribute__((noinline)) static void draw(Brush& pen, Spot item, Job& job) {
        const Image& rom = pen.rom;
        const Rect r = read_rect(rom, word(item.at + item::place));
        const Stand is = stand(rom, item.at, r.w, State::load_number(job.next));
        const Stand was = stand(rom, item.at, r.w, State::load_number(item.shown));
        if (pen.pieces.turn() < r.w) {
            draw_columns(pen, item.at, r, is, was, job.whole);
        }
        if (Parts::tape && is_tape(rom, item.at) && (job.whole || is.first != was.first)) {
            draw_label_row(pen, item.at, r, is.first, is.first - was.first, job);
        }
    }

private:
    /// Where the ruler and its pointer stand: the scale pixel in column 0, and the pointer's column.
    struct Stand {
        int32_t first;
        int16_t pointer;
    };

    static bool is_tape(const Image& rom, uint16_t item) {
        return Parts::tape && (rom.u8(word(item + scale::flags)) & scale::tape) &&
               rom.u8(word(item + scale::face)) != none;
    }
    static uint8_t tick_rows(const Image& rom, uint16_t item) {
        return byte(static_cast<unsigned>(rom.u8(word(item + scale::major_tick))) + below_ticks);
    }
    static int32_t position(const Image& rom, const State& values, uint16_t item) {
        return values.get(rom.u8(word(item + scale::value))) / rom.i32(word(item + scale::units));
    }
    static Stand stand(const Image& rom, uint16_t item, uint16_t columns, int32_t position) {
        if (Parts::tape && (rom.u8(word(item + scale::flags)) & scale::tape)) {
            const int16_t middle = static_cast<int16_t>(columns / 2);
            return Stand{position - middle, middle};
        }
        const int32_t first = rom.i32(word(item + scale::from));
        const int32_t pointer = position - first;
        // Off the scale is off the scale, however far.
        return Stand{first,
                     pointer < -half_pointer || pointer > columns
                         ? static_cast<int16_t>(-half_pointer - 1)
                         : static_cast<int16_t>(pointer)};
    }
    // Remainder that is never negative.
    __attribute__((noinline)) static uint16_t modulo(int32_t number, uint16_t by) {
        const int32_t rest = number % static_cast<int32_t>(by);
        return static_cast<uint16_t>(rest < 0 ? rest + by : rest);
    }

    // Walks the columns of one stand from left to right.
    class Columns {
    public:
        Columns(const Image& rom, uint16_t item, const Stand& stand, uint16_t x)
            : minor_(rom.u16(word(item + scale::minor))),
              major_(rom.u16(word(item + scale::major))),
              minor_left_(word(static_cast<unsigned>(minor_) - modulo(stand.first + x, minor_))),
              major_left_(word(static_cast<unsigned>(major_) - modulo(stand.first + x, major_))),
              to_pointer_(static_cast<int16_t>(stand.pointer - static_cast<int16_t>(x))) {}

        /// What this column shows: the field of the item that has the length of its tick, or none, or the
        /// pointer's paint.
        uint8_t what() const {
            return to_pointer_ <= half_pointer && to_pointer_ >= -half_pointer ? scale::pointer_ink
                   : major_left_ == major_                                     ? scale::major_tick
                   : minor_left_ == minor_                                     ? scale::minor_tick
                                                                               : none;
        }
        /// Columns to the next one that may show anything.
        uint16_t empty() const {
            uint16_t columns = smaller(minor_left_, major_left_);
            if (to_pointer_ >= -half_pointer) {
                columns =
                    to_pointer_ <= half_pointer
                        ? uint16_t{1}
                        : smaller(columns, word(static_cast<unsigned>(to_pointer_) - half_pointer));
            }
            return columns;
        }
        /// @pre columns <= empty().
        void go(uint16_t columns) {
            to_pointer_ = static_cast<int16_t>(to_pointer_ - static_cast<int16_t>(columns));
            minor_left_ = left(minor_left_, columns, minor_);
            major_left_ = left(major_left_, columns, major_);
        }

    private:
        static uint16_t left(uint16_t to_next, uint16_t gone, uint16_t pitch) {
            return to_next == gone ? pitch : word(static_cast<unsigned>(to_next) - gone);
        }

        uint16_t minor_, major_, minor_left_, major_left_;
        int16_t to_pointer_;
    };

    // Goes on from the column whose turn it is, and sends those that differ.
    __attribute__((noinline)) static void draw_columns(
        Brush& pen, uint16_t item, const Rect& r, const Stand& is, const Stand& was, bool whole) {
        const Image& rom = pen.rom;
        const uint8_t rows = tick_rows(rom, item);
        const uint16_t ground = pen.colour_at(word(item + scale::ground));
        uint16_t x = pen.pieces.turn();
        Columns now(rom, item, is, x), before(rom, item, was, x);
        while (x < r.w && !pen.pieces.full()) {
            const uint8_t what = now.what();
            if (whole || what != before.what()) {
                const bool pointer = what == scale::pointer_ink;
                // The pointer is longer than any tick, and keeps off the labels.
                const uint8_t ink = what == none ? uint8_t{0}
                                    : pointer    ? byte(rows - 1u)
                                                 : rom.u8(word(item + what));
                pen.bus().window(word(r.x + x), r.y, 1, rows);
                pen.bus().push(
                    pen.colour_at(word(item + (pointer ? scale::pointer_ink : scale::ink))), ink);
                pen.bus().push(ground, word(static_cast<unsigned>(rows) - ink));
                pen.pieces.sent(rows);
            }
            const uint16_t columns = whole ? uint16_t{1} : smaller(now.empty(), before.empty());
            now.go(columns);
            before.go(columns);
            x = word(x + columns);
        }
        pen.pieces.go_on_to(x);
    }

    // The glyphs of a label, last first: digits, with a point before the decimals.
    struct Number {
        uint8_t glyphs[12];
        uint8_t count;
        uint16_t width;
        void add(const Brush& pen, uint16_t face_at, uint8_t glyph) {
            glyphs[count++] = glyph;
            width = word(width + pen.advance(face_at, glyph));
        }
    };
    __attribute__((noinline)) static void number(
        const Brush& pen, uint16_t item, uint16_t face_at, int32_t scale_pixel, Number& n) {
        const Image& rom = pen.rom;
        const uint8_t decimals = rom.u8(word(item + scale::decimals));
        const int32_t quotient =
            scale_pixel * rom.i32(word(item + scale::units)) / rom.i32(word(item + scale::divide));
        uint32_t rest = static_cast<uint32_t>(quotient < 0 ? -quotient : quotient);
        n.count = 0;
        n.width = 0;
        do {
            if (n.count == decimals && decimals != 0) {
                n.add(pen, face_at, rom.u8(word(item + scale::point)));
            }
            const uint8_t digit = take_digit(rest);
            n.add(pen,
                  face_at,
                  byte(rom.u8(word(item + scale::zero)) + static_cast<unsigned>(digit)));
        } while (rest != 0 || (decimals != 0 && n.count < decimals + 2));
        if (quotient < 0) {
            n.add(pen, face_at, rom.u8(word(item + scale::minus)));
        }
    }

    // The row of labels, from column job.cells on: ground and a label by turns. job.marks: glyphs of the
    // next label that stand.
    // @param moved  Columns by which the tape has gone to the left.
    __attribute__((noinline)) static void draw_label_row(
        Brush& pen, uint16_t item, const Rect& r, int32_t first, int32_t moved, Job& job) {
        const Image& rom = pen.rom;
        const uint16_t face_at = pen.face_at(rom.u8(word(item + scale::face)));
        const uint16_t major = rom.u16(word(item + scale::major));
        const uint16_t top = word(r.y + static_cast<unsigned>(tick_rows(rom, item)));
        const Colours colours{pen.colour_at(word(item + scale::label_ink)),
                              pen.colour_at(word(item + scale::ground))};
        // Labels apart from each other that went less than half way have left ground on one side only.
        const bool little = !job.whole && (rom.u8(word(item + scale::flags)) & scale::apart) &&
                            moved < major / 2 && -moved < major / 2;
        Number n;
        while (!pen.pieces.full() && job.cells < r.w) {
            const uint16_t label = next_label(pen, item, face_at, r.w, first, job.cells, n);
            uint16_t from = job.cells, to = label;
            if (little && from != 0 && to != r.w) {
                if (moved > 0) {
                    to = smaller(to, word(from + static_cast<uint16_t>(moved)));
                } else {
                    from = greater(from, word(to + static_cast<uint16_t>(moved)));
                }
            }
            if (from < to) {
                pen.pieces.go_straight_to_it();
                pen.fill(Rect{word(r.x + from),
                              top,
                              word(static_cast<unsigned>(to) - from),
                              word(r.y + r.h - top)},
                         colours.ground);
                if (!pen.pieces.went()) {
                    return;
                }
            }
            job.cells = label;
            if (label == r.w) {
                return;
            }
            uint16_t x = word(r.x + label);
            uint8_t stands = static_cast<uint8_t>(job.marks);
            for (uint8_t i = n.count; i-- != 0;) {
                if (stands != 0) {
                    --stands;
                } else {
                    pen.pieces.go_straight_to_it();
                    pen.glyph(Point{x, top}, face_at, n.glyphs[i], colours);
                    if (!pen.pieces.went()) {
                        return;
                    }
                    ++job.marks;
                }
                x = word(x + pen.advance(face_at, n.glyphs[i]));
            }
            job.cells = word(static_cast<unsigned>(label) + n.width);
            job.marks = 0;
        }
    }

    // Where the next label begins: at column `from` or later, and it ends on the scale. `columns` of the
    // scale: there is none.
    static uint16_t next_label(const Brush& pen,
                               uint16_t item,
                               uint16_t face_at,
                               uint16_t columns,
                               int32_t first,
                               uint16_t from,
                               Number& n) {
        const uint16_t major = pen.rom.u16(word(item + scale::major));
        for (uint16_t centre = from;; ++centre) {
            const uint16_t past = modulo(first + centre, major);
            const uint16_t on = past == 0 ? uint16_t{0} : word(static_cast<unsigned>(major) - past);
            if (on >= columns - centre) {
                return columns;
            }
            centre = word(static_cast<unsigned>(centre) + on);
            number(pen, item, face_at, first + centre, n);
            const uint16_t half = word(n.width / 2u);
            if (centre >= from + half) {
                const uint16_t label = word(static_cast<unsigned>(centre) - half);
                return label + n.width <= columns ? label : columns;
            }
        }
    }
};

}  // namespace dialplate

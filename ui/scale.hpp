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
    static constexpr uint8_t columns_a_slice = 64, sent_a_slice = 16;
    static constexpr uint8_t below_ticks = 2;  // blank rows between a major tick and its label

    static bool differs(const Image& rom, const State& values, Spot item) {
        return position(rom, values, item.at) != State::load_number(item.shown);
    }

    static void begin(const Image& rom, const State& values, Spot item, Job& job) {
        job.target = position(rom, values, item.at);
        job.cells = 0;  // column up to which the row of labels is drawn
        job.mark = 0;   // glyphs of the label after it that are drawn
    }

    static void commit(const Job& job, uint8_t* shown) { State::store_number(shown, job.target); }

    /// First the columns of ticks, then the row of labels. Each finds its place by itself: the turn of the
    /// pieces is the column, job.cells tells how far the labels are.
    static void draw(Brush& pen, Spot item, Job& job) {
        const Image& rom = pen.rom;
        const Rect r = read_rect(rom, word(item.at + item::place));
        const Stand is = stand(rom, item.at, r.w, job.target);
        const Stand was = stand(rom, item.at, r.w, State::load_number(item.shown));
        if (pen.pieces.turn() < r.w && draw_columns(pen, item.at, r, is, was, job.whole)) {
            return;
        }
        if (Parts::tape && is_tape(rom, item.at) && job.cells < r.w &&
            (job.whole || is.first != was.first)) {
            pen.pieces.go_straight_to_it();
            draw_label_row(pen, item.at, r, is.first, job);
        }
    }

private:
    /// Where the ruler and its pointer stand: the scale pixel in column 0, and the pointer's column.
    struct Stand {
        int32_t first, pointer;
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
            const int32_t middle = columns / 2;
            return Stand{position - middle, middle};
        }
        const int32_t first = rom.i32(word(item + scale::from));
        return Stand{first, position - first};
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
              to_minor_(modulo(stand.first + x, minor_)),
              to_major_(modulo(stand.first + x, major_)),
              to_pointer_(stand.pointer - x) {}

        /// What the next column shows: the field of the item that has the length of its tick, or none, or
        /// the pointer's paint.
        uint8_t next() {
            const bool pointer = to_pointer_ <= half_pointer && to_pointer_ >= -half_pointer;
            const uint8_t what = pointer          ? scale::pointer_ink
                                 : to_major_ == 0 ? scale::major_tick
                                 : to_minor_ == 0 ? scale::minor_tick
                                                  : none;
            --to_pointer_;
            if (++to_minor_ == minor_) {
                to_minor_ = 0;
            }
            if (++to_major_ == major_) {
                to_major_ = 0;
            }
            return what;
        }

    private:
        uint16_t minor_, major_, to_minor_, to_major_;
        int32_t to_pointer_;
    };

    // Looks at some columns from the one whose turn it is, and sends those that differ. False: none left.
    static bool draw_columns(
        Brush& pen, uint16_t item, const Rect& r, const Stand& is, const Stand& was, bool whole) {
        const Image& rom = pen.rom;
        const uint8_t rows = tick_rows(rom, item);
        const uint16_t ground = pen.colour_at(word(item + scale::ground));
        const uint16_t tick_ink = pen.colour_at(word(item + scale::ink));
        uint16_t x = pen.pieces.turn();
        const uint16_t end = smaller(r.w, word(x + columns_a_slice));
        Columns now(rom, item, is, x), before(rom, item, was, x);
        for (uint8_t left = sent_a_slice; x < end && left != 0; ++x) {
            const uint8_t what = now.next();
            if (what == before.next() && !whole) {
                continue;
            }
            const bool pointer = what == scale::pointer_ink;
            // The pointer is longer than any tick, and keeps off the labels.
            const uint8_t ink = what == none ? uint8_t{0}
                                : pointer    ? byte(rows - 1u)
                                             : rom.u8(word(item + what));
            pen.bus().window(word(r.x + x), r.y, 1, rows);
            pen.bus().push(pointer ? pen.colour_at(word(item + scale::pointer_ink)) : tick_ink,
                           ink);
            pen.bus().push(ground, word(static_cast<unsigned>(rows) - ink));
            --left;
        }
        const bool looked = x != pen.pieces.turn();
        pen.pieces.go_on_to(x, looked);
        return looked;
    }

    // The glyphs of a label, last first: digits, with a point before the decimals.
    struct Number {
        uint8_t glyphs[12];
        uint8_t count;
        uint16_t width;
    };
    static Number number(const Brush& pen, uint16_t item, uint16_t face_at, int32_t scale_pixel) {
        const Image& rom = pen.rom;
        const uint8_t decimals = rom.u8(word(item + scale::decimals));
        const int32_t quotient =
            scale_pixel * rom.i32(word(item + scale::units)) / rom.i32(word(item + scale::divide));
        uint32_t rest = static_cast<uint32_t>(quotient < 0 ? -quotient : quotient);
        Number n{{}, 0, 0};
        do {
            if (n.count == decimals && decimals != 0) {
                n.glyphs[n.count++] = rom.u8(word(item + scale::point));
            }
            n.glyphs[n.count++] =
                byte(rom.u8(word(item + scale::zero)) + static_cast<unsigned>(rest % 10));
            rest /= 10;
        } while (rest != 0 || (decimals != 0 && n.count < decimals + 2));
        if (quotient < 0) {
            n.glyphs[n.count++] = rom.u8(word(item + scale::minus));
        }
        for (uint8_t i = 0; i < n.count; ++i) {
            n.width = word(n.width + pen.advance(face_at, n.glyphs[i]));
        }
        return n;
    }

    // A slice of the row of labels: the ground before the next label, or one of its glyphs.
    static void draw_label_row(Brush& pen, uint16_t item, const Rect& r, int32_t first, Job& job) {
        const Image& rom = pen.rom;
        const uint16_t face_at = pen.face_at(rom.u8(word(item + scale::face)));
        const uint16_t major = rom.u16(word(item + scale::major));
        const uint16_t top = word(r.y + static_cast<unsigned>(tick_rows(rom, item)));
        // The first major tick whose label fits between what is drawn and the right edge.
        int32_t centre = job.cells + (major - modulo(first + job.cells, major)) % major;
        for (; centre < r.w; centre += major) {
            const Number n = number(pen, item, face_at, first + centre);
            const int32_t start = centre - n.width / 2;
            if (start < job.cells) {
                continue;
            }
            if (start + n.width > r.w) {
                break;
            }
            uint16_t x = static_cast<uint16_t>(start);
            if (job.mark == 0 && fill_gap(pen, item, r, top, x, job)) {
                return;
            }
            uint8_t i = byte(n.count - 1u);
            for (; i != n.count - 1 - job.mark; --i) {
                x = word(x + pen.advance(face_at, n.glyphs[i]));
            }
            pen.glyph(Point{word(r.x + x), top},
                      face_at,
                      n.glyphs[i],
                      Colours{pen.colour_at(word(item + scale::label_ink)),
                              pen.colour_at(word(item + scale::ground))});
            ++job.mark;
            if (i == 0) {
                job.cells = word(static_cast<uint16_t>(start) + n.width);
                job.mark = 0;
            }
            return;
        }
        fill_gap(pen, item, r, top, r.w, job);
    }

    // A band of the ground between labels, up to column `to`. False: it was complete.
    static bool fill_gap(
        Brush& pen, uint16_t item, const Rect& r, uint16_t top, uint16_t to, Job& job) {
        if (job.cells >= to) {
            return false;
        }
        const uint16_t turn = pen.pieces.turn();
        pen.fill(Rect{word(r.x + job.cells), top, word(to - job.cells), word(r.y + r.h - top)},
                 pen.colour_at(word(item + scale::ground)));
        if (pen.pieces.turn() != turn) {
            job.cells = to;
        }
        return true;
    }
};

}  // namespace dialplate

// Scale: a ruler of the tuning range. Either the tape moves under a fixed pointer, or the pointer moves.
//
// Everything counts in scale pixels: a value divided by the units that a pixel stands for. Ticks hang
// from the top edge, labels stand below them, and the pointer covers the rows of the ticks.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/job.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct ScaleArt {
    static constexpr uint8_t shown_bytes = 4;  // scale pixel of the value
    static constexpr uint8_t below_ticks = 2;  // ground rows between a major tick and its label
    static constexpr uint16_t pointer_width = 3;

    struct Form {
        uint8_t value, flags, face;
        uint8_t ink, ground, label_ink, pointer_ink;
        uint8_t minor_tick, major_tick;
        uint8_t zero, point, minus;
        int32_t units;  // a pixel
        int32_t from;   // moving pointer: scale pixel at the left edge
        uint16_t minor, major;
        int32_t divide;
        uint8_t decimals;
        bool tape() const { return Parts::tape && (flags & scale_flag::tape) != 0; }
    };

    /// Where the ruler and its pointer stand: the scale pixel in column 0, and the pointer's column.
    struct Stand {
        int32_t first;
        int32_t pointer;
    };

    static bool differs(Reader from, const Values& values, const uint8_t* shown) {
        const Form form = read(from);
        return position(form, values) != Values::load_number(shown);
    }

    static void begin(Reader from, const Values& values, Job& job) {
        job.target = position(read(from), values);
        job.cells = 0;  // column where the row of labels is drawn to
        job.mark = 0;   // glyphs of the label after it that are drawn
    }

    static void commit(const Job& job, uint8_t* shown) { Values::store_number(shown, job.target); }

    static void draw(Pen<Bus, Parts>& pen, Rect r, Reader from, const uint8_t* shown, Job& job) {
        const Form form = read(from);
        const Stand is = stand(form, r, job.target);
        const Stand was = stand(form, r, Values::load_number(shown));
        // First the columns of ticks, then the row of labels, then what is left below them. Each finds
        // its place by itself: the turn of the pieces is the column, job.cells how far the labels are.
        if (pen.pieces.turn() < r.w && draw_columns(pen, form, r, is, was, job.whole)) {
            return;
        }
        pen.pieces.go_straight_to_it();
        const bool labels = form.face != none && (job.whole || is.first != was.first);
        if (labels && job.cells < r.w) {
            draw_label_row(pen, form, r, is, job);
        } else if (job.whole && job.cells <= r.w) {
            const uint16_t rows = word(
                tick_rows(form) +
                (form.face == none ? 0u
                                   : static_cast<uint32_t>(pen.height(pen.face_at(form.face)))));
            const Rect below{0,
                             word(static_cast<uint32_t>(r.y) + rows),
                             r.w,
                             word(r.h - static_cast<uint32_t>(rows))};
            if (fill_gap(pen, r, below, pen.colour(form.ground))) {
                job.cells = word(r.w + 1u);
            }
        }
    }

private:
    static Form read(Reader& from) {
        Form form{};
        form.value = from.u8();
        form.flags = from.u8();
        form.face = from.u8();
        form.ink = from.u8();
        form.ground = from.u8();
        form.label_ink = from.u8();
        form.pointer_ink = from.u8();
        form.minor_tick = from.u8();
        form.major_tick = from.u8();
        form.zero = from.u8();
        form.point = from.u8();
        form.minus = from.u8();
        form.units = from.i32();
        form.from = from.i32();
        form.minor = from.u16();
        form.major = from.u16();
        form.divide = from.i32();
        form.decimals = from.u8();
        return form;
    }

    static uint16_t tick_rows(const Form& form) {
        return word(static_cast<uint32_t>(form.major_tick) + below_ticks);
    }
    static int32_t position(const Form& form, const Values& values) {
        return values.get(form.value) / form.units;
    }
    static Stand stand(const Form& form, Rect r, int32_t position) {
        const int32_t middle = static_cast<int32_t>(r.w / 2u);
        return form.tape() ? Stand{position - middle, middle}
                           : Stand{form.from, position - form.from};
    }
    // Remainder that is never negative.
    static uint16_t modulo(int32_t number, uint16_t by) {
        const int32_t rest = number % static_cast<int32_t>(by);
        return word(static_cast<uint32_t>(rest < 0 ? rest + by : rest));
    }

    // What a column of the tick rows shows, by the length of its ink from the top.
    struct Column {
        uint16_t rows;
        bool pointer;
        bool operator!=(const Column& other) const {
            return rows != other.rows || pointer != other.pointer;
        }
    };

    // Walks the columns of one stand from left to right.
    class Columns {
    public:
        Columns(const Form& form, const Stand& stand, uint16_t x)
            : form_(form),
              minor_(modulo(stand.first + x, form.minor)),
              major_(modulo(stand.first + x, form.major)),
              to_pointer_(stand.pointer - x) {}
        Column next() {
            const bool pointer = to_pointer_ <= static_cast<int32_t>(pointer_width / 2) &&
                                 to_pointer_ >= -static_cast<int32_t>(pointer_width / 2);
            const uint16_t rows = pointer       ? tick_rows(form_)
                                  : major_ == 0 ? form_.major_tick
                                  : minor_ == 0 ? form_.minor_tick
                                                : uint16_t{0};
            --to_pointer_;
            minor_ = minor_ + 1u == form_.minor ? uint16_t{0} : word(minor_ + 1u);
            major_ = major_ + 1u == form_.major ? uint16_t{0} : word(major_ + 1u);
            return Column{rows, pointer};
        }

    private:
        const Form& form_;
        uint16_t minor_, major_;
        int32_t to_pointer_;
    };

    // Sends columns that differ, from the one whose turn it is until the slice is full. False: none left.
    static bool draw_columns(Pen<Bus, Parts>& pen,
                             const Form& form,
                             Rect r,
                             const Stand& is,
                             const Stand& was,
                             bool whole) {
        const uint16_t rows = tick_rows(form);
        uint16_t x = pen.pieces.turn();
        Columns now(form, is, x), before(form, was, x);
        uint16_t left = greater(1, smaller(r.w, pen.band_rows(rows)));
        bool sent = false;
        for (; x < r.w && left != 0; ++x) {
            const Column column = now.next();
            if (whole || column != before.next()) {
                pen.bus().window(word(static_cast<uint32_t>(r.x) + x), r.y, 1, rows);
                pen.bus().push(pen.colour(column.pointer ? form.pointer_ink : form.ink),
                               column.rows);
                pen.bus().push(pen.colour(form.ground),
                               word(rows - static_cast<uint32_t>(column.rows)));
                --left;
                sent = true;
            }
        }
        pen.pieces.go_on_to(x, sent);
        return sent;
    }

    // The words of a label: digits, from the right, with a point before the decimals.
    struct Number {
        uint8_t glyphs[12];  // backwards
        uint8_t count;
        Number(const Form& form, int32_t units) : glyphs(), count(0) {
            const int32_t quotient = units / form.divide;
            uint32_t rest = quotient < 0 ? 0u - static_cast<uint32_t>(quotient)
                                         : static_cast<uint32_t>(quotient);
            do {
                if (form.decimals != 0 && count == form.decimals) {
                    glyphs[count++] = form.point;
                }
                glyphs[count++] = byte(form.zero + rest % 10);
                rest /= 10;
            } while (rest != 0 || (form.decimals != 0 && count <= form.decimals + 1));
            if (quotient < 0) {
                glyphs[count++] = form.minus;
            }
        }
    };

    // A slice of the row of labels: the ground before the next label, or one of its glyphs.
    static void draw_label_row(
        Pen<Bus, Parts>& pen, const Form& form, Rect r, const Stand& is, Job& job) {
        const uint16_t face_at = pen.face_at(form.face);
        const uint16_t rows = pen.height(face_at);
        const uint16_t y = word(static_cast<uint32_t>(r.y) + tick_rows(form));
        const uint16_t ground = pen.colour(form.ground);
        // The first major tick whose label fits between what is drawn and the right edge.
        int32_t centre = static_cast<int32_t>(job.cells) +
                         (form.major - modulo(is.first + job.cells, form.major)) % form.major;
        for (; centre < static_cast<int32_t>(r.w); centre += form.major) {
            const Number number(form, (is.first + centre) * form.units);
            uint16_t width = 0;
            for (uint8_t i = 0; i < number.count; ++i) {
                width = word(static_cast<uint32_t>(width) + pen.advance(face_at, number.glyphs[i]));
            }
            const int32_t start = centre - static_cast<int32_t>(width / 2u);
            if (start < static_cast<int32_t>(job.cells)) {
                continue;
            }
            if (start + width > static_cast<int32_t>(r.w)) {
                break;
            }
            uint16_t x = word(static_cast<uint32_t>(start));
            if (job.mark == 0) {
                if (x > job.cells) {
                    if (fill_gap(
                            pen,
                            r,
                            Rect{job.cells, y, word(x - static_cast<uint32_t>(job.cells)), rows},
                            ground)) {
                        job.mark = 1;
                    }
                    return;
                }
                job.mark = 1;
            }
            const uint8_t last = byte(static_cast<uint32_t>(number.count) - job.mark);
            for (uint8_t i = byte(number.count - 1u); i > last; --i) {
                x = word(static_cast<uint32_t>(x) + pen.advance(face_at, number.glyphs[i]));
            }
            pen.glyph(Point{word(static_cast<uint32_t>(r.x) + x), y},
                      face_at,
                      number.glyphs[last],
                      Colours{pen.colour(form.label_ink), ground});
            ++job.mark;
            if (last == 0) {
                job.cells = word(static_cast<uint32_t>(start) + width);
                job.mark = 0;
            }
            return;
        }
        if (fill_gap(pen,
                     r,
                     Rect{job.cells, y, word(r.w - static_cast<uint32_t>(job.cells)), rows},
                     ground)) {
            job.cells = r.w;
        }
    }

    // A band of the ground between labels. True: it is complete.
    static bool fill_gap(Pen<Bus, Parts>& pen, Rect r, Rect gap, uint16_t ground) {
        const uint16_t turn = pen.pieces.turn();
        gap.x = word(static_cast<uint32_t>(r.x) + gap.x);
        pen.fill(gap, ground);
        return pen.pieces.turn() != turn;
    }
};

}  // namespace dialplate

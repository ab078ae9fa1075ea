// Changed runs: a digit becomes another by what differs. Both are decoded side by side; rows that follow each
// other and differ in about the same columns go out in one window, or in two side by side if a gap between them pays.
//
// A window costs as much as a dozen pixels, so a row joins those above it unless that sends more pixels in vain than a
// window costs.
#pragma once

#include "ui/clipped_rows.hpp"
#include "ui/digit_rows.hpp"
#include "ui/edges.hpp"
#include "ui/geometry.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

template <class Bus, class Parts>
class ChangedRuns {
public:
    using Rows = DigitRows<Rom<typename Parts::Bytes>, Parts>;

    /// @param at     Corner of the cell on the glass.
    /// @param times  Pixels of the glass that a pixel of the bitmap becomes.
    ChangedRuns(Bus& bus, Point at, uint8_t times, Colours colours)
        : bus_(bus), at_(at), times_(times), window_(worth_a_window(times)), colours_(colours) {}

    /// Sends what makes `is` of `was`. width, height: of the cells, in pixels of the bitmap.
    __attribute__((noinline)) void send(Rows& was, Rows& is, uint8_t width, uint8_t height) {
        Edges before;
        uint8_t of_before = 0, of_now = 0;  // rows of what was read that are not compared yet
        for (uint8_t y = 0; y != height;) {
            if (of_before == 0) {
                of_before = was.read(before);
            }
            if (of_now == 0) {
                last_ = &stripes_[used_];
                of_now = is.read(stripes_[used_].edges);
            }
            const uint8_t rows = of_before < of_now ? of_before : of_now;
            add(y, rows, difference(before.at, last_->edges.at, width));
            y = byte(static_cast<unsigned>(y) + rows);
            of_before = byte(static_cast<unsigned>(of_before) - rows);
            of_now = byte(static_cast<unsigned>(of_now) - rows);
        }
        close();
    }

private:
    /// Rows that look the same, as they are to be.
    struct Stripe {
        uint8_t rows;
        Edges edges;
    };
    // A window costs about as much as so many pixels.
    static constexpr uint8_t window_pixels = 10;
    static constexpr uint8_t most_stripes = 6;

    /// Columns from the first to the last that differ, and the widest gap between them. Half-open; gap_from at or
    /// behind gap_to: there is no gap. to == 0: nothing differs.
    struct Spans {
        uint8_t from, gap_from, gap_to, to;
    };

    // Merges the edges of two rows. One that both have changes nothing between them; what is left, in turns, is where
    // they begin to differ and to be alike.
    struct Unlike {
        const uint8_t *a, *b;

        __attribute__((always_inline)) uint8_t next() {
            for (;; ++a, ++b) {
                const uint8_t of_a = *a, of_b = *b;
                if (of_a < of_b) {
                    ++a;
                    return of_a;
                }
                if (of_a != of_b) {
                    ++b;
                    return of_b;
                }
                if (of_a == Edges::end) {
                    return of_a;
                }
            }
        }
    };
    static Spans difference(const uint8_t* a, const uint8_t* b, uint8_t width) {
        Unlike unlike{a, b};
        Spans spans{unlike.next(), 0, 0, 0};
        if (spans.from != Edges::end) {
            uint8_t from = spans.from;
            do {
                const uint8_t to = unlike.next();
                if (spans.to != 0 &&
                    byte(static_cast<unsigned>(from) - spans.to) >
                        byte(static_cast<unsigned>(spans.gap_to) - spans.gap_from)) {
                    spans.gap_from = spans.to;
                    spans.gap_to = from;
                }
                spans.to = to == Edges::end ? width : to;
                from = to == Edges::end ? to : unlike.next();
            } while (from != Edges::end);
        }
        return spans;
    }

    // What it costs to send rows that differ so, in pixels of the bitmap, without the first window.
    uint16_t cost(const Spans& spans, uint8_t rows) const {
        const uint16_t all = word(byte(static_cast<unsigned>(spans.to) - spans.from) * rows);
        if (spans.gap_from >= spans.gap_to) {
            return all;
        }
        const uint16_t gap =
            word(byte(static_cast<unsigned>(spans.gap_to) - spans.gap_from) * rows);
        return gap > window_ ? word(static_cast<unsigned>(all) - gap + window_) : all;
    }

    // So many rows from `y` on, read into the last stripe, differ so.
    void add(uint8_t y, uint8_t rows, Spans spans) {
        if (spans.to == 0) {
            close();
            return;
        }
        uint16_t pixels = cost(spans, rows);
        if (used_ != 0) {
            const Spans both{spans.from < spans_.from ? spans.from : spans_.from,
                             spans.gap_from > spans_.gap_from ? spans.gap_from : spans_.gap_from,
                             spans.gap_to < spans_.gap_to ? spans.gap_to : spans_.gap_to,
                             spans.to > spans_.to ? spans.to : spans_.to};
            const uint16_t joined = cost(both, byte(static_cast<unsigned>(rows_) + rows));
            if (used_ == most_stripes ||
                joined > word(static_cast<unsigned>(pixels_) + pixels + window_)) {
                close();
            } else {
                spans = both;
                pixels = joined;
            }
        }
        spans_ = spans;
        pixels_ = pixels;
        if (used_ == 0) {
            top_ = y;
            rows_ = 0;
            if (last_ != stripes_) {
                stripes_[0] = *last_;
                last_ = stripes_;
            }
        }
        if (last_ == &stripes_[used_]) {
            ++used_;
            last_->rows = 0;
        }
        last_->rows = byte(static_cast<unsigned>(last_->rows) + rows);
        rows_ = byte(static_cast<unsigned>(rows_) + rows);
    }

    // Sends the rows that are kept. What was read last may lie behind them and stays.
    __attribute__((noinline)) void close() {
        if (used_ == 0) {
            return;
        }
        Columns columns{spans_.from, spans_.to};
        if (spans_.gap_from < spans_.gap_to &&
            word(byte(static_cast<unsigned>(spans_.gap_to) - spans_.gap_from) * rows_) > window_) {
            columns.to = spans_.gap_from;
            send_window(columns);
            columns = Columns{spans_.gap_to, spans_.to};
        }
        send_window(columns);
        used_ = 0;
    }
    __attribute__((noinline)) void send_window(Columns columns) {
        bus_.window(word(at_.x + large(columns.from)),
                    word(at_.y + large(top_)),
                    large(columns.count()),
                    large(rows_));
        ClippedRows<Bus, Parts> out(bus_, colours_, columns, times_);
        const Stripe* stripe = stripes_;
        for (uint8_t left = used_; left != 0; --left, ++stripe) {
            out.send(stripe->edges, stripe->rows);
        }
        out.finish();
    }

    // Pixels of the bitmap that cost as much as a window.
    static uint8_t worth_a_window(uint8_t times) {
        static_assert(window_pixels / 4 == 2 && window_pixels / 9 == 1 && window_pixels / 16 == 0,
                      "window_pixels / (times * times) is 4 - times where a bitmap is enlarged");
        return !Parts::enlarged || times == 1 ? window_pixels
                                              : byte(4u - static_cast<unsigned>(times));
    }
    uint16_t large(uint8_t pixels) const {
        return Parts::enlarged ? word(static_cast<unsigned>(pixels) * times_) : uint16_t{pixels};
    }

    Bus& bus_;
    const Point at_;
    const uint8_t times_;
    const uint8_t window_;
    const Colours colours_;
    Spans spans_{0, 0, 0, 0};
    uint16_t pixels_ = 0;  // what it costs to send the rows that are kept
    uint8_t top_ = 0, rows_ = 0, used_ = 0;
    Stripe
        stripes_[most_stripes + 1];  // of the window that is open, and the rows that were read last
    Stripe* last_ = stripes_;        // those rows
};

}  // namespace dialplate

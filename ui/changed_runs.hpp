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
    __attribute__((always_inline)) void send(Rows& was, Rows& is, uint8_t width, uint8_t height) {
        Edges before;
        uint8_t of_before = 0, of_now = 0;  // rows of what was read that are not compared yet
        for (uint8_t y = 0; y != height;) {
            if (of_before == 0) {
                of_before = was.read(before);
            }
            if (of_now == 0) {
                if (first_ == end_) {
                    first_ = end_ = stripes_;
                }
                last_ = end_;
                of_now = is.read(end_->edges);
            }
            const uint8_t rows = of_before < of_now ? of_before : of_now;
            add(y, rows, Parts::Runs::difference(before, last_->edges, width));
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
    static constexpr uint8_t window_pixels = 9;
    static constexpr uint8_t most_stripes = 6;

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
        if (end_ != first_) {
            const Spans both{spans.from < spans_.from ? spans.from : spans_.from,
                             spans.gap_from > spans_.gap_from ? spans.gap_from : spans_.gap_from,
                             spans.gap_to < spans_.gap_to ? spans.gap_to : spans_.gap_to,
                             spans.to > spans_.to ? spans.to : spans_.to};
            const uint16_t joined = cost(both, byte(static_cast<unsigned>(rows_) + rows));
            if (end_ == stripes_ + most_stripes ||
                joined > word(static_cast<unsigned>(pixels_) + pixels + window_)) {
                close();
            } else {
                spans = both;
                pixels = joined;
            }
        }
        spans_ = spans;
        pixels_ = pixels;
        if (end_ == first_) {
            top_ = y;
            rows_ = 0;
            if (last_ == stripes_ + most_stripes) {
                stripes_[0] = *last_;
                first_ = end_ = last_ = stripes_;
            }
        }
        if (last_ == end_) {
            ++end_;
            last_->rows = 0;
        }
        last_->rows = byte(static_cast<unsigned>(last_->rows) + rows);
        rows_ = byte(static_cast<unsigned>(rows_) + rows);
    }

    // Sends the rows that are kept. What was read last stays where it is.
    __attribute__((noinline)) void close() {
        if (end_ == first_) {
            return;
        }
        Columns columns{spans_.from, spans_.to};
        if (spans_.gap_from < spans_.gap_to &&
            word(byte(static_cast<unsigned>(spans_.gap_to) - spans_.gap_from) * rows_) > window_) {
            columns.to = spans_.gap_from;
        }
        for (;;) {
            bus_.window(word(at_.x + large(columns.from)),
                        word(at_.y + large(top_)),
                        large(columns.count()),
                        large(rows_));
            ClippedRows<Bus, Parts> out(bus_, colours_, columns, times_);
            for (const Stripe* stripe = first_; stripe != end_; ++stripe) {
                out.send(stripe->edges, stripe->rows);
            }
            out.finish();
            if (columns.to == spans_.to) {
                break;
            }
            columns = Columns{spans_.gap_to, spans_.to};
        }
        first_ = end_ = last_;
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
    uint8_t top_ = 0, rows_ = 0;
    // The stripes that are kept for the next window, and the one that was read last: the last of them or behind them.
    Stripe *first_ = stripes_, *end_ = stripes_, *last_ = stripes_;
    Stripe stripes_[most_stripes + 1];
};

}  // namespace dialplate

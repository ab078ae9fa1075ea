// Changed runs: a digit becomes another by what differs. Both are decoded side by side; rows that follow each
// other and differ in about the same columns go out in one window.
//
// A window costs as much as a dozen pixels, so the columns of a window reach from the first difference to the last,
// and a row joins the window above it unless that sends more pixels in vain than a window costs.
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
        : bus_(bus), at_(at), times_(times), colours_(colours) {}

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

    // An edge that both rows have changes nothing between them: what is left, in pairs, is where they differ.
    static Columns difference(const uint8_t* a, const uint8_t* b, uint8_t width) {
        while (*a == *b) {
            if (*a == Edges::end) {
                return Columns{0, 0};
            }
            ++a;
            ++b;
        }
        Columns span{*a < *b ? *a : *b, 0};
        bool differ = false;
        while (*a != *b || *a != Edges::end) {
            if (*a == *b) {
                ++a;
                ++b;
                continue;
            }
            span.to = *a < *b ? *a++ : *b++;
            differ = !differ;
        }
        if (differ) {
            span.to = width;
        }
        return span;
    }

    // So many rows from `y` on, read into the last stripe, differ in these columns.
    void add(uint8_t y, uint8_t rows, Columns span) {
        if (span.to == 0) {
            close();
            return;
        }
        if (used_ != 0) {
            const Columns both{span.from < span_.from ? span.from : span_.from,
                               span.to > span_.to ? span.to : span_.to};
            const uint16_t in_vain =
                word(static_cast<unsigned>(both.count() - span_.count()) * rows_ +
                     static_cast<unsigned>(both.count() - span.count()) * rows);
            if (used_ == most_stripes || in_vain > worth_a_window()) {
                close();
            } else {
                span_ = both;
            }
        }
        if (used_ == 0) {
            top_ = y;
            span_ = span;
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

    // Sends the window that is open. What was read last may lie behind its stripes and stays.
    __attribute__((noinline)) void close() {
        if (used_ == 0) {
            return;
        }
        const Columns span = span_;
        bus_.window(word(at_.x + large(span.from)),
                    word(at_.y + large(top_)),
                    large(span.count()),
                    large(rows_));
        ClippedRows<Bus, Parts> out(bus_, colours_, span, times_);
        for (const Stripe* stripe = stripes_; used_ != 0; ++stripe, --used_) {
            out.send(stripe->edges, stripe->rows);
        }
        out.finish();
    }

    /// Pixels of the bitmap that cost as much as a window.
    uint8_t worth_a_window() const {
        static_assert(window_pixels / 4 == 2 && window_pixels / 9 == 1 && window_pixels / 16 == 0,
                      "window_pixels / (times * times) is 4 - times where a bitmap is enlarged");
        return !Parts::enlarged || times_ == 1 ? window_pixels
                                               : byte(4u - static_cast<unsigned>(times_));
    }
    uint16_t large(uint8_t pixels) const {
        return Parts::enlarged ? word(static_cast<unsigned>(pixels) * times_) : uint16_t{pixels};
    }

    Bus& bus_;
    const Point at_;
    const uint8_t times_;
    const Colours colours_;
    Columns span_{0, 0};
    uint8_t top_ = 0, rows_ = 0, used_ = 0;
    Stripe
        stripes_[most_stripes + 1];  // of the window that is open, and the rows that were read last
    Stripe* last_ = stripes_;        // those rows
};

}  // namespace dialplate

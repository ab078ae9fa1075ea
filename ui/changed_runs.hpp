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
        bool was_same = false, is_same = false;
        for (uint8_t y = 0; y < height;) {
            if (!was_same) {
                was.read(before);
            }
            Edges& now = stripes_[used_].edges;
            if (!is_same) {
                is.read(now);
            } else {
                now = *last_;
            }
            last_ = &now;
            uint8_t rows = 0;
            do {
                ++rows;
                if (byte(static_cast<unsigned>(y) + rows) == height) {
                    break;
                }
                was_same = was.same();
                is_same = is.same();
            } while (was_same && is_same);
            add(y, rows, difference(before, now, width));
            y = byte(static_cast<unsigned>(y) + rows);
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

    static Columns difference(const Edges& a, const Edges& b, uint8_t width) {
        uint8_t first = 0;
        while (first != a.count && first != b.count && a.at[first] == b.at[first]) {
            ++first;
        }
        const uint8_t from = first != a.count && (first == b.count || a.at[first] < b.at[first])
                                 ? a.at[first]
                             : first != b.count ? b.at[first]
                                                : width;
        uint8_t of_a = a.count, of_b = b.count;
        if (((of_a ^ of_b) & 1) != 0) {
            return Columns{from, width};
        }
        while (of_a != first && of_b != first && a.at[of_a - 1] == b.at[of_b - 1]) {
            --of_a;
            --of_b;
        }
        uint8_t to = from;
        if (of_a != first) {
            to = a.at[of_a - 1];
        }
        if (of_b != first && b.at[of_b - 1] > to) {
            to = b.at[of_b - 1];
        }
        return Columns{from, to};
    }

    // So many rows from `y` on, read into the next stripe, differ in these columns.
    void add(uint8_t y, uint8_t rows, Columns span) {
        if (span.from == span.to) {
            close();
            return;
        }
        if (used_ != 0) {
            const Columns both{span.from < span_.from ? span.from : span_.from,
                               span.to > span_.to ? span.to : span_.to};
            const uint16_t in_vain =
                word(static_cast<unsigned>(both.count() - span_.count()) * rows_ +
                     static_cast<unsigned>(both.count() - span.count()) * rows);
            if (used_ == most_stripes || large_area(in_vain) > window_pixels) {
                close();
            } else {
                span_ = both;
            }
        }
        if (used_ == 0) {
            top_ = y;
            span_ = span;
            rows_ = 0;
            stripes_[0].edges = *last_;
            last_ = &stripes_[0].edges;
        }
        stripes_[used_].rows = rows;
        ++used_;
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

    uint16_t large_area(uint16_t pixels) const {
        return Parts::enlarged ? word(static_cast<unsigned>(pixels) * byte(times_ * times_))
                               : pixels;
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
    const Edges* last_ = &stripes_[0].edges;  // those rows
};

}  // namespace dialplate

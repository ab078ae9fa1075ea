// Rows of a digit sent into a window that is narrower than its cell.
#pragma once

#include "ui/bus.hpp"
#include "ui/edges.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// Sends the columns `window` of rows; what ends a row and begins the next in one colour is one push.
template <class Bus, class Parts, class = void>
class ClippedRows {
public:
    ClippedRows(Bus& bus, const Colours& colours, Columns window, uint8_t times)
        : bus_(bus), colours_(colours), window_(window), times_(times) {}

    /// So many rows of the bitmap, each drawn `times` times.
    __attribute__((always_inline)) void send(const Edges& edges, uint8_t rows) {
        const uint8_t* edge = edges.at;
        bool inked = false;
        for (; *edge <= window_.from; ++edge) {
            inked = !inked;
        }
        // The row's runs inside the window, ground and ink in turns, in pixels of the bitmap.
        uint8_t runs[sizeof edges.at];
        uint8_t* end = runs;
        uint8_t column = window_.from;
        while (*edge < window_.to) {
            *end++ = byte(static_cast<unsigned>(*edge) - column);
            column = *edge++;
        }
        *end++ = byte(static_cast<unsigned>(window_.to) - column);
        for (uint16_t again = large(rows); again != 0; --again) {
            if (inked != ink_ || run_ >= most_run_) {
                push();
                ink_ = inked;
                run_ = 0;
            }
            const uint8_t* run = runs;
            run_ = word(static_cast<unsigned>(run_) + large(*run++));
            while (run != end) {
                push();
                ink_ = !ink_;
                run_ = large(*run++);
            }
        }
    }
    /// After the last row.
    void finish() { push(); }

private:
    static constexpr uint16_t most_run_ = 0x8000;

    __attribute__((always_inline)) void push() {
        bus_.push(ink_ ? colours_.ink : colours_.ground, run_);
    }
    uint16_t large(uint8_t pixels) const {
        return Parts::enlarged ? word(static_cast<unsigned>(pixels) * times_) : uint16_t{pixels};
    }

    Bus& bus_;
    const Colours& colours_;
    const Columns window_;
    const uint8_t times_;
    uint16_t run_ = 0;  // pixels of one colour that are not pushed yet
    bool ink_ = false;
};

/// The same by what the bus brings, `Bus::Rows`.
template <class Bus, class Parts>
class ClippedRows<Bus, Parts, typename Exists<decltype(Bus::Rows::finish())>::Type> {
public:
    ClippedRows(Bus&, const Colours& colours, Columns window, uint8_t times)
        : colours_(colours), window_(window), times_(Parts::enlarged ? times : uint8_t{1}) {}

    __attribute__((always_inline)) void send(const Edges& edges, uint8_t rows) {
        Bus::Rows::send(
            edges, window_, times_, word(static_cast<unsigned>(rows) * times_), colours_);
    }
    void finish() { Bus::Rows::finish(); }

private:
    const Colours colours_;
    const Columns window_;
    const uint8_t times_;
};

}  // namespace dialplate

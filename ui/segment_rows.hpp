// Rows of a glyph made of segments, sent into a window that is open.
#pragma once

#include "ui/clipped_rows.hpp"
#include "ui/edges.hpp"
#include "ui/row.hpp"
#include "ui/segment.hpp"

#include <stdint.h>

namespace dialplate {

/// Rows top <= y < below.
struct RowRange {
    uint8_t top, below;
};

/// Sends these columns of the rows, each pixel `times` x `times`. @pre There are some of both.
template <class Bus, class Parts>
__attribute__((noinline)) void send_segment_rows(Bus& bus,
                                                 const Colours& colours,
                                                 const SegmentShape& shape,
                                                 Columns columns,
                                                 RowRange rows,
                                                 uint8_t times) {
    ClippedRows<Bus, Parts> out(bus, colours, columns, times);
    Edges row;
    for (uint8_t y = rows.top; y != rows.below;) {
        shape.read(y, row);
        uint8_t below = shape.row_below(y);
        if (below > rows.below) {
            below = rows.below;
        }
        out.send(row, byte(static_cast<unsigned>(below) - y));
        y = below;
    }
    out.finish();
}

}  // namespace dialplate

// Changed segments: a digit made of segments becomes another by the bars that change.
//
// A digit has five zones of rows: its three bars across, with the tips of the uprights, and the uprights between
// them. In each zone the columns of what changes are known without drawing anything; zones that follow each other
// with the same columns go out in one window.
#pragma once

#include "ui/clipped_rows.hpp"
#include "ui/geometry.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"
#include "ui/segment.hpp"
#include "ui/segment_rows.hpp"

#include <stdint.h>

namespace dialplate {

template <class Bus, class Parts>
struct ChangedSegments {
    Bus& bus;
    const Point at;       ///< Corner of the cell on the glass.
    const uint8_t times;  ///< Pixels of the glass that one of the shape becomes.
    const Colours& colours;

    /// Sends what makes `shape` of the digit `was`.
    __attribute__((noinline)) void send(const SegmentShape& shape, uint8_t was) const {
        const uint8_t changed = shape.bars_unlike(was);
        uint8_t top = 0;
        Columns open{0, 0};
        for (uint8_t zone = 0; zone != SegmentShape::zones; ++zone) {
            const uint8_t y = shape.top_of(zone);
            const Columns columns = shape.columns_of(changed, zone);
            if (columns.from != open.from || columns.to != open.to) {
                send_rows(shape, open, top, y);
                top = y;
                open = columns;
            }
        }
        send_rows(shape, open, top, shape.height);
    }

private:
    __attribute__((noinline)) void send_rows(const SegmentShape& shape,
                                             Columns columns,
                                             uint8_t top,
                                             uint8_t below) const {
        if (columns.from == columns.to) {
            return;
        }
        bus.window(word(at.x + large(columns.from)),
                   word(at.y + large(top)),
                   large(columns.count()),
                   large(byte(static_cast<unsigned>(below) - top)));
        send_segment_rows<Bus, Parts>(bus, colours, shape, columns, RowRange{top, below}, times);
    }
    uint16_t large(uint8_t pixels) const {
        return Parts::enlarged ? word(static_cast<unsigned>(pixels) * times) : uint16_t{pixels};
    }
};

}  // namespace dialplate

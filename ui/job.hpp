// What the engine is drawing at the moment. One item at a time, so one job is enough for all of them.
#pragma once

#include "ui/geometry.hpp"

#include <stdint.h>

namespace dialplate {

/// An item as the walk over a page finds it.
struct Spot {
    uint16_t at;     ///< In the image.
    uint8_t* shown;  ///< What the glass shows of it, in the engine's memory.
};

/// What an update is to bring onto the glass. Held until it is there, so that a value which changes in
/// between makes a new update instead of tearing this one. What the fields mean is each item's own.
struct Job {
    int32_t target;
    uint16_t cells, marks;
    uint8_t mark;
    bool whole;  ///< The page was turned: draw every pixel of the item.
};

}  // namespace dialplate

// What the engine is drawing at the moment. One item at a time, so one job is enough for all of them.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"

#include <stdint.h>

namespace dialplate {

/// An item as the walk over a page finds it.
struct Spot {
    uint16_t at;     ///< In the image.
    uint8_t* shown;  ///< What the glass shows of it, in the engine's memory.
};

/// What an update is to bring onto the glass. Held until it is there, so that a value which changes in
/// between makes a new update instead of tearing this one.
struct Job {
    static constexpr uint8_t most_bytes = 5;

    /// What the glass is to show of the item, as the engine remembers it when it is there. Each kind has
    /// its own bytes; an item differs from the glass if these do.
    uint8_t next[most_bytes];
    /// How far the drawing has come, where the pieces alone do not tell. What they count is each kind's own.
    uint16_t cells, marks;
    uint8_t glyphs[readout::most_cells];  ///< Of a readout, what each cell is to show.
    bool whole;                           ///< The page was turned: draw every pixel of the item.
};

}  // namespace dialplate

// The seam between the engine and a display. The engine is a template over its bus, and asks two things
// of it; ui/mcu writes them for real pins, the simulator for a model of the controller, and a sketch
// with a display driver of its own in terms of that driver:
//
//     void window(uint16_t x, uint16_t y, uint16_t width, uint16_t height);
//         Opens a window: the next pixels fill it row by row. Width and height are at least 1.
//     void push(uint16_t colour, uint16_t count);
//         Sends `count` pixels of one colour (RGB565, high byte first on the wire); count may be 0.
//
// A bus may bring a type `Contexts` that decides, and perhaps sends, the rows of glyphs in `context`; see
// context.hpp; and a type `Rows` that sends rows of digits by their edges, see clipped_rows.hpp.
//
// Coordinates: origin at the top left of the glass as the reader sees it, x right, y down; the engine
// never opens a window outside the glass and never sends fewer or more pixels than the window holds.
#pragma once

namespace dialplate {

/// For templates that ask whether a bus brings a type.
template <class>
struct Exists {
    using Type = void;
};

}  // namespace dialplate

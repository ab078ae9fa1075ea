// Legend: fixed text. Drawn with its page and never again.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct LegendArt {
    static constexpr uint8_t shown_bytes = 0;

    static void draw(Pen<Bus, Parts>& pen, Rect r, Reader from) {
        const uint8_t face = from.u8(), ink = from.u8(), ground = from.u8(), lines = from.u8();
        const uint16_t ground_colour = pen.colour(ground);
        const BoxStyle style{0, 0, pen.colour(ink), ground_colour, ground_colour, ground_colour};
        draw_box(pen, r, style, face, from, lines);
    }
};

}  // namespace dialplate

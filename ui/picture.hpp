// Picture: a bitmap in two paints. Drawn with its page and never again, a strip of rows a slice.
#pragma once

#include "ui/image_format.hpp"
#include "ui/pen.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct PictureArt {
    static constexpr uint8_t shown_bytes = 0;

    static void draw(Pen<Bus, Parts>& pen, Rect r, Reader from) {
        const uint8_t number = from.u8(), ink = from.u8(), ground = from.u8();
        const uint16_t at = pen.rom.u16(word(pen.rom.u16(header::at_pictures) + 2u * number));
        Reader head(pen.rom, at);
        const uint16_t width = head.u16(), height = head.u16();
        const uint8_t coding = head.u8(), k = head.u8(), strip_rows = head.u8(), strips = head.u8();
        const uint8_t turn = byte(pen.pieces.turn());
        if (turn >= strips) {
            return;
        }
        pen.pieces.go_straight_to_it();
        const uint16_t y = word(static_cast<uint32_t>(turn) * strip_rows);
        const uint16_t rows = smaller(strip_rows, word(height - static_cast<uint32_t>(y)));
        const uint16_t data =
            word(static_cast<uint32_t>(at) + pen.rom.u16(word(at + picture::places + 2u * turn)));
        pen.strip(Rect{r.x, word(static_cast<uint32_t>(r.y) + y), width, rows},
                  data,
                  coding,
                  k,
                  Colours{pen.colour(ink), pen.colour(ground)});
    }
};

}  // namespace dialplate

// Picture: a bitmap in two paints. Drawn with its page and never again, strip by strip.
#pragma once

#include "ui/image_format.hpp"
#include "ui/pen.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct PictureArt {
    __attribute__((noinline)) static void draw(Pen<Bus, Parts>& pen, uint16_t item) {
        const auto& rom = pen.rom;
        const uint16_t at = rom.u16(
            word(rom.u16(header::at_pictures) + 2u * rom.u8(word(item + picture_item::number))));
        const Rect whole = read_rect(rom, word(item + item::place));
        const uint8_t strip_rows = rom.u8(word(at + picture::strip_rows));
        while (!pen.pieces.full()) {
            const uint8_t turn = byte(pen.pieces.turn());
            if (turn >= rom.u8(word(at + picture::strips))) {
                return;
            }
            const uint16_t above = word(static_cast<unsigned>(turn) * strip_rows);
            pen.pieces.go_straight_to_it();
            pen.strip(Rect{whole.x,
                           word(whole.y + above),
                           whole.w,
                           smaller(strip_rows, word(whole.h - above))},
                      word(at + rom.u16(word(at + picture::places + 2u * turn))),
                      rom.u8(word(at + picture::packing)),
                      rom.u8(word(at + picture::parameters)),
                      Colours{pen.colour_at(word(item + picture_item::ink)),
                              pen.colour_at(word(item + picture_item::ground))});
        }
    }
};

}  // namespace dialplate

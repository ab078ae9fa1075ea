// Picture: a bitmap in two paints or four. Drawn with its page and never again, strip by strip.
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
            const Rect where{whole.x,
                             word(whole.y + above),
                             whole.w,
                             smaller(strip_rows, word(whole.h - above))};
            const uint16_t bits = word(at + rom.u16(word(at + picture::places + 2u * turn)));
            const uint8_t coding = rom.u8(word(at + picture::packing));
            const Colours colours{pen.colour_at(word(item + picture_item::ink)),
                                  pen.colour_at(word(item + picture_item::ground))};
            if ((Parts::tones_plain || Parts::tones_context) && (coding & packing::tones) != 0) {
                pen.strip(where,
                          bits,
                          coding,
                          Shades{{colours.ground,
                                  pen.colour_at(word(item + picture_item::lighter)),
                                  colours.ink,
                                  pen.colour_at(word(item + picture_item::darker))}});
            } else {
                pen.strip(where, bits, coding, rom.u8(word(at + picture::parameters)), colours);
            }
        }
    }
};

}  // namespace dialplate

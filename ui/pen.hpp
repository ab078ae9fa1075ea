// What every item draws with: fills and glyphs, as pieces of a drawing, on a bus.
#pragma once

#include "ui/geometry.hpp"
#include "ui/glyph.hpp"
#include "ui/image_format.hpp"
#include "ui/pieces.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// Ink and ground of a glyph, as the display holds them.
struct Colours {
    uint16_t ink, ground;
};

/// Bus: see bus.hpp. Parts: see parts.hpp.
template <class Bus, class Parts>
class Pen {
public:
    using Image = Rom<typename Parts::Bytes>;

    Pen(const Bus& bus, const Image& image) : rom(image), bus_(bus) { use_palette(0); }

    const Image rom;
    Pieces pieces;

    void use_palette(uint8_t palette) {
        paints_ = word(rom.u16(header::at_paints) + 2u * palette * rom.u8(header::paints));
    }
    __attribute__((noinline)) uint16_t colour(uint8_t paint) const {
        return rom.u16(word(paints_ + 2u * paint));
    }
    /// The colour of the paint whose number stands at `at` in the image.
    __attribute__((noinline)) uint16_t colour_at(uint16_t at) const { return colour(rom.u8(at)); }
    Bus& bus() { return bus_; }

    /// How many rows of width `w` a slice may fill: at least one.
    uint16_t band_rows(uint16_t w) const {
        const uint16_t pixels = word(16u * rom.u8(header::band));
        return w >= pixels ? uint16_t{1} : word(pixels / w);
    }

    /// A piece: a rectangle of one colour, a band of rows a slice.
    __attribute__((noinline)) void fill(Rect r, uint16_t paint_colour) {
        if (open_band(r)) {
            uint16_t rows = r.h;
            do {
                bus_.push(paint_colour, r.w);
            } while (--rows != 0);
        }
    }

    /// A piece of rectangle `r`, a band of rows a slice: if it is its turn, opens the window for the next
    /// band and leaves that band in `r`.
    __attribute__((noinline)) bool open_band(Rect& r) {
        if (r.w == 0 || r.h == 0 || !pieces.mine()) {
            return false;
        }
        const uint16_t done = pieces.row();
        const uint16_t rows = smaller(band_rows(r.w), word(r.h - done));
        pieces.drawn_rows(rows, r.h);
        r.y = word(r.y + done);
        r.h = rows;
        bus_.window(r.x, r.y, r.w, r.h);
        return true;
    }

    __attribute__((noinline)) uint16_t face_at(uint8_t number) const {
        return rom.u16(word(rom.u16(header::at_faces) + 2u * number));
    }
    uint8_t enlarged(uint16_t face_at) const {
        return Parts::enlarged ? rom.u8(word(face_at + face::enlarged)) : uint8_t{1};
    }
    /// Rows of a cell, enlarged.
    __attribute__((noinline)) uint16_t height(uint16_t face_at) const {
        return enlarge(rom.u8(word(face_at + face::height)), face_at);
    }
    /// Columns of a digit's cell, enlarged.
    __attribute__((noinline)) uint16_t digit_advance(uint16_t face_at) const {
        uint8_t columns = rom.u8(word(face_at + face::advance));
        if (Parts::segment && is_segment(face_at)) {
            columns =
                byte(columns + static_cast<unsigned>(rom.u8(word(face_at + face::segment_gap))));
        }
        return enlarge(columns, face_at);
    }
    /// Columns of a glyph's cell, enlarged.
    __attribute__((noinline)) uint16_t advance(uint16_t face_at, uint8_t glyph) const {
        const uint8_t columns = Parts::segment && is_segment(face_at)
                                    ? segment(face_at, glyph).advance()
                                    : rom.u8(glyph_at(face_at, glyph));
        return enlarge(columns, face_at);
    }

    /// A piece: one glyph, its whole cell.
    __attribute__((noinline)) void glyph(Point at,
                                         uint16_t face_at,
                                         uint8_t number,
                                         Colours colours) {
        if (!pieces.mine()) {
            return;
        }
        pieces.drawn();
        bus_.window(at.x, at.y, advance(face_at, number), height(face_at));
        send_glyph(face_at, number, colours);
    }

    /// A piece: a picture strip whose bits start at `at`.
    void strip(Rect where, uint16_t at, uint8_t coding, uint8_t k, Colours colours) {
        if (!pieces.mine()) {
            return;
        }
        pieces.drawn();
        bus_.window(where.x, where.y, where.w, where.h);
        Sink sink{bus_, colours, 1};
        BitBlock<Image> block{Bits<Image>(rom, at), where.w, where.h, 1};
        if (Parts::runs && coding == packing::runs) {
            block.runs(k, sink);
        } else if (Parts::plain) {
            block.plain(Rect{0, 0, where.w, where.h}, sink);
        }
    }

private:
    // Where the decoders' runs go.
    struct Sink {
        Bus& bus;
        Colours colours;
        uint8_t times;
        __attribute__((noinline)) void run(bool ink, uint16_t pixels) {
            bus.push(ink ? colours.ink : colours.ground,
                     Parts::enlarged ? word(pixels * times) : pixels);
        }
    };

    uint16_t enlarge(uint8_t pixels, uint16_t face_at) const {
        return word(static_cast<unsigned>(pixels) * enlarged(face_at));
    }
    bool is_segment(uint16_t face_at) const { return rom.u8(face_at) == packing::segment; }
    uint16_t glyph_at(uint16_t face_at, uint8_t number) const {
        return word(face_at + rom.u16(word(face_at + face::places + 2u * number)));
    }
    SegmentShape segment(uint16_t face_at, uint8_t number) const {
        return SegmentShape{rom.u8(word(face_at + face::advance)),
                            rom.u8(word(face_at + face::height)),
                            rom.u8(word(face_at + face::parameters)),
                            rom.u8(word(face_at + face::segment_gap)),
                            number};
    }

    void send_glyph(uint16_t face_at, uint8_t number, Colours colours) {
        const uint8_t times = enlarged(face_at);
        const uint8_t rows = rom.u8(word(face_at + face::height));
        Sink sink{bus_, colours, times};
        if (Parts::segment && is_segment(face_at)) {
            const SegmentShape shape = segment(face_at, number);
            for (uint8_t y = 0; y < rows; ++y) {
                for (uint8_t i = 0; i < times; ++i) {
                    shape.row(y, sink);
                }
            }
            return;
        }
        if (!Parts::plain && !Parts::runs) {
            return;
        }
        const uint16_t at = glyph_at(face_at, number);
        const uint8_t columns = rom.u8(at);
        if (Parts::runs && rom.u8(face_at) == packing::runs) {
            BitBlock<Image> block{Bits<Image>(rom, word(at + 1u)), columns, rows, times};
            block.runs(rom.u8(word(face_at + face::parameters)), sink);
        } else if (Parts::plain) {
            BitBlock<Image> block{Bits<Image>(rom, word(at + 5u)), columns, rows, times};
            block.plain(Rect{rom.u8(word(at + 1u)),
                             rom.u8(word(at + 2u)),
                             rom.u8(word(at + 3u)),
                             rom.u8(word(at + 4u))},
                        sink);
        }
    }

    Bus bus_;
    uint16_t paints_ = 0;
};

}  // namespace dialplate

// What every item draws with: fills and glyphs, as pieces of a drawing, on a bus.
#pragma once

#include "ui/geometry.hpp"
#include "ui/glyph.hpp"
#include "ui/image_format.hpp"
#include "ui/parts.hpp"
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
    Pen(Bus& bus, Rom image) : rom(image), bus_(&bus) { use_palette(0); }

    const Rom rom;
    Pieces pieces;

    void use_palette(uint8_t palette) {
        paints_ = word(rom.u16(header::at_paints) + 2u * palette * rom.u8(header::paints));
    }
    uint16_t colour(uint8_t paint) const { return rom.u16(word(paints_ + 2u * paint)); }
    Bus& bus() { return *bus_; }

    /// How many rows of width `w` a slice may fill: at least one.
    uint16_t band_rows(uint16_t w) const {
        const uint16_t pixels = word(16u * rom.u8(header::band));
        return w >= pixels ? uint16_t{1} : word(pixels / w);
    }

    /// A piece: a rectangle of one colour, a band of rows a slice.
    void fill(Rect r, uint16_t paint_colour) {
        if (r.w == 0 || r.h == 0 || !pieces.mine()) {
            return;
        }
        const uint16_t done = pieces.row();
        const uint16_t rows = smaller(band_rows(r.w), word(r.h - static_cast<uint32_t>(done)));
        bus_->window(r.x, word(static_cast<uint32_t>(r.y) + done), r.w, rows);
        for (uint16_t i = 0; i < rows; ++i) {
            bus_->push(paint_colour, r.w);
        }
        pieces.drawn_rows(rows, r.h);
    }

    uint16_t face_at(uint8_t number) const {
        return rom.u16(word(rom.u16(header::at_faces) + 2u * number));
    }
    uint8_t enlarged(uint16_t face_at) const {
        return Parts::enlarged ? rom.u8(word(face_at + face::enlarged)) : uint8_t{1};
    }
    /// Rows of a cell, enlarged.
    uint16_t height(uint16_t face_at) const {
        return word(static_cast<uint32_t>(rom.u8(word(face_at + face::height))) *
                    enlarged(face_at));
    }
    /// Columns of a digit's cell, enlarged.
    uint16_t digit_advance(uint16_t face_at) const {
        uint16_t columns = rom.u8(word(face_at + face::advance));
        if (Parts::segment && is_segment(face_at)) {
            columns =
                word(static_cast<uint32_t>(columns) + rom.u8(word(face_at + face::segment_gap)));
        }
        return word(static_cast<uint32_t>(columns) * enlarged(face_at));
    }
    /// Columns of a glyph's cell, enlarged.
    uint16_t advance(uint16_t face_at, uint8_t glyph) const {
        const uint8_t columns = Parts::segment && is_segment(face_at)
                                    ? segment(face_at, glyph).advance()
                                    : rom.u8(glyph_at(face_at, glyph));
        return word(static_cast<uint32_t>(columns) * enlarged(face_at));
    }

    /// A piece: one glyph, its whole cell. Returns its advance.
    uint16_t glyph(Point at, uint16_t face_at, uint8_t number, Colours colours) {
        const uint16_t columns = advance(face_at, number);
        if (columns != 0 && pieces.mine()) {
            bus_->window(at.x, at.y, columns, height(face_at));
            send_glyph(face_at, number, colours);
            pieces.drawn();
        }
        return columns;
    }

    /// A piece: `rows` rows of a picture strip that starts at `at`.
    void strip(Rect where, uint16_t at, uint8_t coding, uint8_t k, Colours colours) {
        if (!pieces.mine()) {
            return;
        }
        bus_->window(where.x, where.y, where.w, where.h);
        Sink sink{*bus_, colours, 1};
        if (Parts::runs && coding == packing::runs) {
            runs_block(Bits(rom, at), where, k, 1, sink);
        } else if (Parts::plain) {
            plain_block(Bits(rom, at), where, Rect{0, 0, where.w, where.h}, 1, sink);
        }
        pieces.drawn();
    }

private:
    // Where the decoders' runs go.
    struct Sink {
        Bus& bus;
        Colours colours;
        uint8_t times;
        void run(bool ink, uint16_t pixels) {
            const uint16_t wide =
                Parts::enlarged ? word(static_cast<uint32_t>(pixels) * times) : pixels;
            bus.push(ink ? colours.ink : colours.ground, wide);
        }
    };

    bool is_segment(uint16_t face_at) const { return rom.u8(face_at) == packing::segment; }
    uint16_t glyph_at(uint16_t face_at, uint8_t number) const {
        return word(static_cast<uint32_t>(face_at) +
                    rom.u16(word(face_at + face::places + 2u * number)));
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
        Sink sink{*bus_, colours, times};
        if (Parts::segment && is_segment(face_at)) {
            const SegmentShape shape = segment(face_at, number);
            for (uint8_t y = 0; y < rows; ++y) {
                for (uint8_t i = 0; i < times; ++i) {
                    shape.row(y, sink);
                }
            }
            return;
        }
        Reader from(rom, glyph_at(face_at, number));
        const Rect cell{0, 0, from.u8(), rows};
        if (Parts::runs && rom.u8(face_at) == packing::runs) {
            runs_block(
                Bits(rom, from.at()), cell, rom.u8(word(face_at + face::parameters)), times, sink);
        } else if (Parts::plain) {
            const uint8_t left = from.u8(), top = from.u8(), w = from.u8(), h = from.u8();
            plain_block(Bits(rom, from.at()), cell, Rect{left, top, w, h}, times, sink);
        }
    }

    Bus* bus_;
    uint16_t paints_ = 0;
};

}  // namespace dialplate

// A digit in `plain` or `runs` as edges, rows that look the same at once. Formats: image.md, "Face".
#pragma once

#include "ui/edges.hpp"
#include "ui/face_metrics.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// A digit from the top. Parts: see parts.hpp.
template <class Image, class Parts>
class DigitRows {
public:
    DigitRows(const Image& rom, uint16_t face_at, GlyphMetrics glyph)
        : rom_(rom),
          packing_(rom.u8(face_at)),
          bitmap_{{glyph.at, 0x80},
                  rom.u8(word(face_at + face::parameters)),
                  glyph.advance,
                  rom.u8(word(face_at + face::height))} {
        if (Parts::plain && packing_ == packing::plain) {
            from_ = rom.u8(glyph.at);
            above_ = rom.u8(word(glyph.at + 1u));
            columns_ = rom.u8(word(glyph.at + 2u));
            inked_ = rom.u8(word(glyph.at + 3u));
            bitmap_.place.at = word(glyph.at + 4u);
        }
    }

    /// Reads the next rows. @return How many there are that look like this, at least 1. @pre There are some left.
    uint8_t read(Edges& row) {
        if (Parts::runs && (!Parts::plain || packing_ == packing::runs)) {
            return Parts::Runs::read(rom_, bitmap_, row.at, Edges::most);
        }
        return Parts::plain ? read_plain(row) : uint8_t{1};
    }

private:
    __attribute__((noinline)) uint8_t read_plain(Edges& row) {
        uint8_t rows = bitmap_.left;
        if (above_ == 0 && inked_ != 0) {
            read_bits(row);
            --inked_;
            rows = 1;
        } else {
            row.at[0] = Edges::end;
            // More of them than there are only in damaged data.
            if (above_ != 0 && above_ < rows) {
                rows = above_;
            }
            above_ = 0;
        }
        bitmap_.left = byte(static_cast<unsigned>(bitmap_.left) - rows);
        return rows;
    }
    void read_bits(Edges& row) {
        BitPlace from = bitmap_.place;
        bool ink = false;
        uint8_t column = from_;
        uint8_t* edge = row.at;
        uint8_t* const last = row.at + Edges::most;
        for (uint8_t left = columns_; left != 0; --left, ++column) {
            if (from.next(rom_) != ink && edge != last) {
                *edge++ = column;
                ink = !ink;
            }
        }
        if (ink && column != bitmap_.width && edge != last) {
            *edge++ = column;
        }
        *edge = Edges::end;
        bitmap_.place = from;
    }

    const Image& rom_;
    const uint8_t packing_;
    RunRows bitmap_;  // of `plain` without parameters
    // Of what has bits in `plain`: its first column, its columns; rows above it, rows of it, that are not read.
    uint8_t from_ = 0, columns_ = 0, above_ = 0, inked_ = 0;
};

}  // namespace dialplate

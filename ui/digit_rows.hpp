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
          bits_{glyph.at, 0x80},
          packing_(rom.u8(face_at)),
          width_(glyph.advance),
          parameters_(rom.u8(word(face_at + face::parameters))),
          left_(rom.u8(word(face_at + face::height))) {
        if (Parts::plain && packing_ == packing::plain) {
            from_ = rom.u8(glyph.at);
            above_ = rom.u8(word(glyph.at + 1u));
            columns_ = rom.u8(word(glyph.at + 2u));
            inked_ = rom.u8(word(glyph.at + 3u));
            bits_.at = word(glyph.at + 4u);
        }
    }

    /// Reads the next rows. @return How many there are that look like this, at least 1. @pre There are some left.
    __attribute__((noinline)) uint8_t read(Edges& row) {
        uint8_t rows = left_;
        if (Parts::runs && packing_ == packing::runs) {
            const uint8_t count =
                Parts::Runs::read(rom_, bits_, parameters_, width_, row.at, Edges::most);
            row.at[count] = Edges::end;
            BitPlace from = bits_;
            rows = 1;
            while (rows != left_ && from.next(rom_)) {
                ++rows;
            }
            bits_ = from;
        } else if (Parts::plain) {
            if (above_ == 0 && inked_ != 0) {
                read_bits(row);
                --inked_;
                rows = 1;
            } else {
                row.at[0] = Edges::end;
                // Of damaged data there may be none left.
                if (above_ != 0 && above_ < rows) {
                    rows = above_;
                }
                above_ = 0;
            }
        }
        left_ = byte(static_cast<unsigned>(left_) - rows);
        return rows;
    }

private:
    void read_bits(Edges& row) {
        BitPlace from = bits_;
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
        if (ink && column != width_ && edge != last) {
            *edge++ = column;
        }
        *edge = Edges::end;
        bits_ = from;
    }

    const Image& rom_;
    BitPlace bits_;
    const uint8_t packing_, width_, parameters_;
    uint8_t left_;  // rows that are not read
    // Of what has bits in `plain`: its first column, its columns; rows above it, rows of it, that are not read.
    uint8_t from_ = 0, columns_ = 0, above_ = 0, inked_ = 0;
};

}  // namespace dialplate

// A digit in `plain` or `runs`, row by row as edges. Formats: image.md, "Face".
#pragma once

#include "ui/edges.hpp"
#include "ui/face_metrics.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// A digit, row by row from the top. Parts: see parts.hpp.
template <class Image, class Parts>
class DigitRows {
public:
    DigitRows(const Image& rom, uint16_t face_at, GlyphMetrics glyph)
        : rom_(rom),
          bits_{glyph.at, 0x80},
          packing_(rom.u8(face_at)),
          width_(glyph.advance),
          parameters_(rom.u8(word(face_at + face::parameters))) {
        if (Parts::plain && packing_ == packing::plain) {
            left_ = rom.u8(glyph.at);
            top_ = rom.u8(word(glyph.at + 1u));
            inked_ = rom.u8(word(glyph.at + 2u));
            below_ = byte(static_cast<unsigned>(top_) + rom.u8(word(glyph.at + 3u)));
            bits_.at = word(glyph.at + 4u);
        }
    }

    /// Whether the next row is known to be the same as the one read last: then it need not be read.
    __attribute__((noinline)) bool same() {
        bool is = false;
        if (Parts::runs && packing_ == packing::runs) {
            is = bits_.next(rom_);
        } else if (Parts::plain) {
            is = row_ < top_ || row_ > below_;
        }
        if (is) {
            ++row_;
        }
        return is;
    }

    __attribute__((noinline)) void read(Edges& row) {
        if (Parts::runs && packing_ == packing::runs) {
            row.count = Parts::Runs::read(rom_, bits_, parameters_, width_, row.at, sizeof row.at);
        } else if (Parts::plain) {
            read_bits(row);
        }
        ++row_;
    }

private:
    void read_bits(Edges& row) {
        row.count = 0;
        if (row_ < top_ || row_ >= below_) {
            return;
        }
        BitPlace from = bits_;
        bool ink = false;
        uint8_t column = left_;
        for (uint8_t left = inked_; left != 0; --left, ++column) {
            if (from.next(rom_) != ink && !row.full()) {
                row.at[row.count++] = column;
                ink = !ink;
            }
        }
        if (ink && column != width_ && !row.full()) {
            row.at[row.count++] = column;
        }
        bits_ = from;
    }

    const Image& rom_;
    BitPlace bits_;
    const uint8_t packing_, width_, parameters_;
    uint8_t row_ = 0;                                     // the next
    uint8_t left_ = 0, top_ = 0, inked_ = 0, below_ = 0;  // of what has bits in `plain`
};

}  // namespace dialplate

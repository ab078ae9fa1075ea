// Decoding glyphs and picture strips into runs of ink and ground. Formats: image.md, "Face", "Picture".
//
// A decoder hands runs to a sink, row by row, left to right: sink.run(bool ink, uint16_t pixels). The
// runs of a row sum to its width; a run may be 0 long.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// The image read bit by bit, bit 7 of a byte first. Copies remember a place.
template <class Image>
class Bits {
public:
    Bits(const Image& rom, uint16_t at) : rom_(&rom), at_(at) {}
    __attribute__((noinline)) bool next() {
        if (left_ == 0) {
            byte_ = rom_->u8(at_++);
            left_ = 8;
        }
        --left_;
        const bool bit = (byte_ & 0x80) != 0;
        byte_ = byte(static_cast<unsigned>(byte_) << 1);
        return bit;
    }

private:
    const Image* rom_;
    uint16_t at_;
    uint8_t byte_ = 0, left_ = 0;
};

/// Rows of bits in one of the packings, each row given `times` times.
template <class Image>
struct BitBlock {
    Bits<Image> bits;
    uint16_t width, height;
    uint8_t times;

    /// Packing `runs`. k: Rice parameters, of ground in bits 0-3, of ink in bits 4-7.
    template <class Sink>
    void runs(uint8_t k, Sink& sink) {
        Bits<Image> row_start = bits;
        for (uint16_t y = 0; y < height; ++y) {
            const bool repeated = y != 0 && bits.next();
            if (!repeated) {
                row_start = bits;
            }
            Bits<Image> row = row_start;
            for (uint8_t i = 0; i < times; ++i) {
                row = row_start;
                runs_row(row, k, sink);
            }
            if (!repeated) {
                bits = row;
            }
        }
    }

    /// Packing `plain`. inked: the rectangle that has bits; around it is ground.
    template <class Sink>
    void plain(Rect inked, Sink& sink) {
        for (uint16_t y = 0; y < height; ++y) {
            const bool empty = y < inked.y || y - inked.y >= inked.h;
            const Bits<Image> row_start = bits;
            for (uint8_t i = 0; i < times; ++i) {
                if (empty) {
                    sink.run(false, width);
                    continue;
                }
                bits = row_start;
                sink.run(false, inked.x);
                plain_row(inked.w, sink);
                sink.run(false, word(width - inked.x - inked.w));
            }
        }
    }

private:
    template <class Sink>
    void plain_row(uint16_t columns, Sink& sink) {
        bool ink = false;
        uint16_t length = 0;
        for (; columns != 0; --columns) {
            if (bits.next() != ink) {
                sink.run(ink, length);
                ink = !ink;
                length = 0;
            }
            ++length;
        }
        sink.run(ink, length);
    }

    template <class Sink>
    void runs_row(Bits<Image>& row, uint8_t k, Sink& sink) {
        bool ink = false, first = true;
        for (uint16_t left = width; left != 0; first = false) {
            uint8_t low_bits = byte(ink ? k >> 4 : k & 15u);
            uint16_t length = 0;
            while (length <= left && row.next()) {
                ++length;
            }
            for (; low_bits != 0; --low_bits) {
                length = word(2u * length + (row.next() ? 1u : 0u));
            }
            // Only damaged data has a run past the row, or an empty one after the first: end the row then.
            if (length > left || (length == 0 && !first)) {
                length = left;
            }
            sink.run(ink, length);
            left = word(left - length);
            ink = !ink;
        }
    }
};

/// A glyph of a segment face: seven bars around two counters, with mitred ends one pixel apart.
struct SegmentShape {
    uint8_t width, height, stroke, gap;
    uint8_t glyph;

    uint8_t advance() const {
        return byte(static_cast<unsigned>(glyph > segment_glyph::minus ? stroke : width) + gap);
    }

    /// Row `y` of the cell, from the top.
    template <class Sink>
    void row(uint8_t y, Sink& sink) const {
        if (glyph > segment_glyph::minus) {
            dots(y, sink);
        } else {
            bars(y, sink);
        }
        sink.run(false, gap);
    }

private:
    // The bars of a digit by their bits: top, the right ones from above, bottom, the left ones from
    // below, middle.
    enum : uint8_t {
        top = 1,
        upper_right = 2,
        lower_right = 4,
        bottom = 8,
        lower_left = 16,
        upper_left = 32,
        middle = 64,
        right = upper_right | lower_right,
        left = upper_left | lower_left,
        all = 127
    };

    static uint8_t lit(uint8_t digit) {
        switch (digit) {
            case 0:
                return all & ~middle;
            case 1:
                return right;
            case 2:
                return all & ~(upper_left | lower_right);
            case 3:
                return all & ~left;
            case 4:
                return right | upper_left | middle;
            case 5:
                return all & ~(upper_right | lower_left);
            case 6:
                return all & ~upper_right;
            case 7:
                return right | top;
            case 8:
                return all;
            case 9:
                return all & ~lower_left;
            default:
                return middle;
        }
    }

    template <class Sink>
    void bars(uint8_t y, Sink& sink) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t middle_row = byte((static_cast<unsigned>(height) - stroke) / 2u);
        // Each side of the cell in this row: columns before the upright, of it, and after it.
        uint8_t before = 0, inked = stroke, after = 0, across = 0;
        bool upper = y < middle_row;
        if (y < stroke || from_below < stroke) {
            inked = y < stroke ? y : from_below;
            after = 1;
            across = y < stroke ? top : bottom;
        } else if (y >= middle_row && y - middle_row < stroke) {
            // Tips that meet half way up: `off` rows from the centre line of the middle bar.
            const uint8_t twice = byte(2u * (y - static_cast<unsigned>(middle_row)) + 1u);
            upper = twice < stroke;
            const uint8_t off = byte((upper ? static_cast<unsigned>(stroke) - twice
                                            : static_cast<unsigned>(twice) - stroke) /
                                     2u);
            const uint8_t half = byte(stroke / 2u);
            before = byte(static_cast<unsigned>(half) + 1u - off);
            inked = off == 0 ? uint8_t{0} : byte(2u * off - 1u);
            after = off == 0 ? uint8_t{0} : uint8_t{1};
            across = middle;
        }
        const uint8_t on = lit(glyph);
        const bool left_on = (on & (upper ? upper_left : lower_left)) != 0;
        const bool right_on = (on & (upper ? upper_right : lower_right)) != 0;
        sink.run(false, before);
        sink.run(left_on, inked);
        sink.run(false, after);
        sink.run((on & across) != 0,
                 word(width - 2u * (static_cast<unsigned>(before) + inked + after)));
        sink.run(false, after);
        sink.run(right_on, inked);
        sink.run(false, before);
    }

    template <class Sink>
    void dots(uint8_t y, Sink& sink) const {
        const uint8_t from_below = byte(height - 1u - y);
        const uint8_t third = byte(height / 3u);
        const bool pair = (y >= third && y - third < stroke) ||
                          (from_below >= third && from_below - third < stroke);
        sink.run(glyph == segment_glyph::point ? from_below < stroke : pair, stroke);
    }
};

}  // namespace dialplate

// Decoding glyphs and picture strips into rows of ink and ground. Formats: image.md, "Face", "Picture".
//
// A decoder hands its rows to an Out, `void send(const Row&)`, in order and as often as they are drawn.
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// The image read bit by bit, bit 7 of a byte first.
template <class Image>
class Bits {
public:
    Bits(const Image& rom, uint16_t at) : rom_(&rom), at_(at) {}
    __attribute__((always_inline)) bool next() {
        bool bit = (rest_ & 0x80) != 0;
        rest_ = byte(static_cast<unsigned>(rest_) << 1);
        if (rest_ == 0) {
            const uint8_t fresh = rom_->u8(at_++);
            bit = (fresh & 0x80) != 0;
            rest_ = byte(static_cast<unsigned>(fresh) << 1 | 1u);
        }
        return bit;
    }

private:
    const Image* rom_;
    uint16_t at_;
    uint8_t rest_ = 0x80;  // the bits to come, then a one, then zeros
};

/// Of a bitmap in pixels, each drawn `times` x `times` on the glass.
struct Extent {
    uint16_t width, height;
    uint8_t times;
};

/// Rows of bits in one of the packings.
template <class Image>
struct BitBlock {
    Bits<Image> bits;
    Extent extent;

    /// Packing `runs`. k: Rice parameters, of ground in bits 0-3, of ink in bits 4-7.
    template <class Out>
    void runs(uint8_t k, Out& out) {
        Row row(extent.times);
        for (uint16_t y = 0; y < extent.height; ++y) {
            if (y == 0 || !bits.next()) {
                read_runs(k, row);
            }
            send(row, out);
        }
    }

    /// Packing `plain`. inked: the rectangle that has bits; around it is ground.
    template <class Out>
    void plain(Rect inked, Out& out) {
        Row row(extent.times);
        for (uint16_t y = 0; y < extent.height; ++y) {
            row.clear();
            if (y < inked.y || y - inked.y >= inked.h) {
                row.add(false, extent.width);
            } else {
                row.add(false, inked.x);
                read_bits(inked.w, row, out);
                add(false, word(extent.width - inked.x - inked.w), row, out);
            }
            send(row, out);
        }
    }

private:
    template <class Out>
    void send(const Row& row, Out& out) const {
        for (uint8_t i = extent.times; i != 0; --i) {
            out.send(row);
        }
    }

    // A row with more strokes than fit goes out in parts; enlarged faces have none.
    template <class Out>
    static void add(bool ink, uint16_t length, Row& row, Out& out) {
        if (!ink && row.full()) {
            out.send(row);
            row.clear();
        }
        row.add(ink, length);
    }

    template <class Out>
    void read_bits(uint16_t columns, Row& row, Out& out) {
        Bits<Image> from = bits;
        bool ink = false;
        uint16_t length = 0;
        for (; columns != 0; --columns) {
            if (from.next() != ink) {
                add(ink, length, row, out);
                ink = !ink;
                length = 0;
            }
            ++length;
        }
        add(ink, length, row, out);
        bits = from;
    }

    __attribute__((noinline)) void read_runs(uint8_t k, Row& row) {
        Bits<Image> from = bits;
        uint8_t used = 0;
        bool ink = false;
        for (uint16_t left = extent.width; left != 0;) {
            uint16_t length = 0;
            while (length <= left && from.next()) {
                ++length;
            }
            for (uint8_t low_bits = k & 15u; low_bits != 0; --low_bits) {
                length = word(2u * length + (from.next() ? 1u : 0u));
            }
            k = byte(static_cast<unsigned>(k) << 4 | k >> 4);
            // Only damaged data has a run past the row, an empty one after the first, or too many: end the
            // row then.
            if (length > left || (length == 0 && used != 0) || used == 2 * most_strokes - 1) {
                length = left;
            }
            row.runs[used++] = word(static_cast<unsigned>(length) * row.times);
            left = word(left - length);
            ink = !ink;
        }
        if (ink) {
            row.runs[used++] = 0;
        }
        row.used = used;
        bits = from;
    }
};

}  // namespace dialplate

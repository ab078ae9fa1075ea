// Bitmaps of two bits a pixel: smoothed glyphs, and pictures in four paints. Formats: image.md, "Tones".
#pragma once

#include "ui/context.hpp"
#include "ui/geometry.hpp"
#include "ui/glyph.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// The colours of a bitmap, by the two bits of a pixel. Bit 1: nearer to ink than to ground; bit 0: between
/// them.
struct Shades {
    uint16_t of[4];
};

/// Half-way between two colours, each part by itself and rounded down.
constexpr uint16_t half_way(uint16_t a, uint16_t b) {
    // Two numbers have what both have, and half of what one has; not the lowest bit of red, green and blue.
    return word((a & b) + (((a ^ b) & 0xF7DEu) >> 1));
}

/// Ground and ink, and what lies one and two thirds of the way between them. In the values as the display holds
/// them, which the eye finds about even, and not in light, where a third of the way from black looks like more
/// than half of it. Off by less than two steps of a part.
inline Shades shades_between(const Colours& colours) {
    uint16_t lighter = colours.ground, darker = colours.ink;
    for (uint8_t i = 3; i != 0; --i) {
        lighter = half_way(colours.ground, darker);
        darker = half_way(colours.ink, lighter);
    }
    return Shades{{colours.ground, lighter, colours.ink, darker}};
}

/// Sends pixels; equal ones that follow each other are one push, from row to row.
template <class Bus>
class ShadeSender {
public:
    ShadeSender(Bus& bus, const Shades& shades) : bus_(&bus), shades_(&shades) {}

    /// @param bits  As in Shades. The others do not matter.
    void pixel(uint8_t bits) {
        bits = byte(bits & 3u);
        if (bits != bits_ || length_ == most_) {
            finish();
            bits_ = bits;
            length_ = 0;
        }
        ++length_;
    }
    void ground(uint16_t pixels) {
        for (; pixels != 0; --pixels) {
            pixel(0);
        }
    }
    /// After the last pixel.
    void finish() const { push(*bus_, *shades_, bits_, length_); }

private:
    static constexpr uint16_t most_ = 0x8000;

    // Told all it needs, so that what counts pixels can stay in registers.
    __attribute__((noinline)) static void push(Bus& bus,
                                               const Shades& shades,
                                               uint8_t bits,
                                               uint16_t length) {
        bus.push(shades.of[bits], length);
    }

    Bus* bus_;
    const Shades* shades_;
    uint16_t length_ = 0;
    uint8_t bits_ = 0;
};

/// Sends a bitmap in `plain`.
/// @param inked  The rectangle that has bits; around it is ground.
template <class Image, class Bus>
__attribute__((noinline)) void send_plain_tones(
    const Image& rom, uint16_t at, const Extent& extent, const Rect& inked, ShadeSender<Bus> out) {
    Bits<Image> bits(rom, at);
    const uint16_t right = word(extent.width - inked.x - inked.w);
    for (uint16_t y = 0; y < extent.height; ++y) {
        if (y < inked.y || y - inked.y >= inked.h) {
            out.ground(extent.width);
            continue;
        }
        out.ground(inked.x);
        for (uint16_t x = inked.w; x != 0; --x) {
            const uint8_t high = bits.next() ? uint8_t{2} : uint8_t{0};
            out.pixel(byte(high | (bits.next() ? 1u : 0u)));
        }
        out.ground(right);
    }
    out.finish();
}

/// Sends a bitmap in `context`. Core and most_columns: see ContextBlock.
/// @pre  extent.width is 1 to most_columns.
template <class Core, uint8_t most_columns, class Image, class Bus>
__attribute__((noinline)) void send_context_tones(const Image& rom,
                                                  uint16_t at,
                                                  const Extent& extent,
                                                  ShadeSender<Bus> out) {
    constexpr uint16_t second = header::bytes + context_model::middle;
    ContextStream stream = begin_stream(rom, at);
    const uint8_t columns = byte(extent.width);
    // The history of the first bits; that of the second ones begins each row with it: the row itself, and the one
    // above.
    uint8_t first_bits[most_columns + 2];
    uint8_t second_bits[most_columns + 2];
    begin_history(first_bits, columns);
    begin_history(second_bits, columns);
    uint8_t chances = context_model::pixels;
    for (uint8_t y = byte(extent.height); y != 0; --y) {
        if (!decides_to_repeat<Core>(rom, stream, chances)) {
            chances = Core::row(rom, stream, header::bytes, first_bits, columns) != 0
                          ? context_model::pixels + context_model::bank
                          : context_model::pixels;
            for (uint8_t x = 0; x != columns; ++x) {
                second_bits[x] = first_bits[x];
            }
            Core::row(rom, stream, second, second_bits, columns);
        } else {
            count_repeat(chances, first_bits, columns);
        }
        for (uint8_t x = 0; x != columns; ++x) {
            out.pixel(byte(((first_bits[x] & context_model::above) != 0 ? 2u : 0u) |
                           ((second_bits[x] & context_model::above) != 0 ? 1u : 0u)));
        }
    }
    out.finish();
}

}  // namespace dialplate

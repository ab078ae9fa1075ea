// Decoding the packing `context` into rows. Format: image.md, "Contexts".
#pragma once

#include "ui/geometry.hpp"
#include "ui/image_format.hpp"
#include "ui/rom.hpp"
#include "ui/row.hpp"

#include <stdint.h>

namespace dialplate {

/// Where an interval decoder is: the next byte of its stream, the value and range of the interval, and the
/// bits that are left of the last byte, then a one, then zeros.
struct ContextStream {
    uint16_t at;
    uint8_t value, range, rest;
};

/// The decisions of the model. What ui/mcu has for a microcontroller does the same, faster.
struct ContextCore {
    /// Whether it also sends a row of a bitmap that is not enlarged: send_row, send_again.
    static constexpr bool sends = false;
    template <class Image>
    static uint8_t send_row(const Image&, ContextStream&, uint8_t*, uint8_t, const Colours&) {
        return 0;
    }
    static void send_again(const uint8_t*, uint8_t, const Colours&) {}

    /// Decides the pixels of a row.
    /// @param chances  Of ground in 1/256, by context: where they stand in the image.
    /// @param history  A byte a column: bit 0 the row above, bit 1 the one above that; afterwards moved on
    ///                 by the new row. Two more bytes of 0 stand after the last column.
    /// @return         Not 0: the row has ink.
    /// @pre            columns is at least 1.
    template <class Image>
    static uint8_t row(const Image& rom,
                       ContextStream& stream,
                       uint16_t chances,
                       uint8_t* history,
                       uint8_t columns) {
        // Bits 6-3: the row above from two columns to the left to one to the right; 2-1: the row above
        // that, the column to the left and this one; 0: the pixel to the left.
        uint8_t context = byte(context_model::left_edge | (history[0] & 1u) << 4 |
                               (history[1] & 1u) << 3 | (history[0] & 2u));
        uint8_t any = 0;
        for (; columns != 0; --columns, ++history) {
            const uint8_t ink =
                decide(rom, stream, rom.u8(word(chances + context))) ? uint8_t{1} : uint8_t{0};
            any = byte(static_cast<unsigned>(any) | ink);
            *history = byte(static_cast<unsigned>(*history) << 1 | ink);
            context =
                byte((context << 1 & 0x74) | (history[2] & 1u) << 3 | (history[1] & 2u) | ink);
        }
        return any;
    }

private:
    template <class Image>
    static bool decide(const Image& rom, ContextStream& stream, uint8_t chance) {
        const uint8_t split = byte(static_cast<unsigned>(stream.range) * chance >> 8);
        const bool ink = stream.value >= split;
        if (ink) {
            stream.value = byte(static_cast<unsigned>(stream.value) - split);
            stream.range = byte(static_cast<unsigned>(stream.range) - split);
        } else {
            stream.range = split;
        }
        // Only a damaged table can leave no range at all.
        while (stream.range < 128 && stream.range != 0) {
            stream.range = byte(2u * stream.range);
            bool bit = (stream.rest & 0x80) != 0;
            stream.rest = byte(2u * stream.rest);
            if (stream.rest == 0) {
                const uint8_t fresh = rom.u8(stream.at++);
                bit = (fresh & 0x80) != 0;
                stream.rest = byte(2u * fresh + 1u);
            }
            stream.value = byte(2u * stream.value + (bit ? 1u : 0u));
        }
        return ink;
    }
};

/// The core that a bus brings, `Bus::Contexts`, or else the usual one.
template <class Bus, class Usual, class = void>
struct ContextsOf {
    using Core = Usual;
};
template <class>
struct Exists {
    using Type = void;
};
template <class Bus, class Usual>
struct ContextsOf<Bus, Usual, typename Exists<typename Bus::Contexts>::Type> {
    using Core = typename Bus::Contexts;
};

template <class Image>
ContextStream begin_stream(const Image& rom, uint16_t at) {
    return ContextStream{word(at + 1u), rom.u8(at), 255, 0x80};
}

/// The decision before a row, whether it is the same as the one above: a pixel without neighbours, with chances
/// of its own.
template <class Core, class Image>
__attribute__((noinline)) bool decides_to_repeat(const Image& rom,
                                                 ContextStream& stream,
                                                 uint8_t chances) {
    uint8_t alone[3] = {0, 0, 0};
    return Core::row(
               rom,
               stream,
               word(static_cast<unsigned>(header::bytes - context_model::left_edge) + chances),
               alone,
               1) != 0;
}

/// A bitmap in `context`. Core: ContextCore, or one for a microcontroller. most_columns: of any bitmap.
template <class Image, class Core, uint8_t most_columns>
class ContextBlock {
public:
    /// @param width  1 to most_columns.
    ContextBlock(const Image& rom, uint16_t at, uint8_t width, uint8_t height)
        : rom_(rom), stream_(begin_stream(rom, at)), width_(width), height_(height) {}

    /// Hands its runs to `out`, void run(bool ink, uint16_t pixels), row by row, each pixel drawn `times` x
    /// `times`; a run goes on from one row to the next.
    template <class Out>
    void send(uint8_t times, Out& out) {
        // Ground above the first row, ink above that; ground to the right of the bitmap.
        uint8_t history[most_columns + 2];
        uint8_t* const end = history + width_;
        for (uint8_t* column = history; column != end; ++column) {
            *column = 2;
        }
        end[0] = 0;
        end[1] = 0;
        uint8_t chances = context_model::pixels;
        bool ink = false;
        uint16_t length = 0;
        for (uint8_t y = height_; y != 0; --y) {
            if (!decides_to_repeat<Core>(rom_, stream_, chances)) {
                // After a repeated row the two rows above are the same.
                if ((chances & context_model::most_repeats) != 0) {
                    for (uint8_t* column = history; column != end; ++column) {
                        *column = (*column & 1) != 0 ? uint8_t{3} : uint8_t{0};
                    }
                }
                const bool sent = Core::sends && times == 1;
                const uint8_t any =
                    sent ? Core::send_row(rom_, stream_, history, width_, out.colours())
                         : Core::row(rom_, stream_, header::bytes, history, width_);
                chances =
                    any != 0 ? context_model::pixels + context_model::bank : context_model::pixels;
                if (sent) {
                    continue;
                }
            } else if ((chances & context_model::most_repeats) != context_model::most_repeats) {
                ++chances;
            }
            if (Core::sends && times == 1) {
                Core::send_again(history, width_, out.colours());
                continue;
            }
            for (uint8_t i = times; i != 0; --i) {
                for (const uint8_t* column = history; column != end; ++column) {
                    if (((*column & 1) != 0) != ink) {
                        out.run(ink, length);
                        ink = !ink;
                        length = 0;
                    }
                    length = word(static_cast<unsigned>(length) + times);
                }
                if (length >= 0x8000) {
                    out.run(ink, length);
                    length = 0;
                }
            }
        }
        out.run(ink, length);
    }

private:
    const Image& rom_;
    ContextStream stream_;
    const uint8_t width_, height_;
};

}  // namespace dialplate

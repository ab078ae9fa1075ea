// Decoding the packing `context` into rows. Format: image.md, "Contexts".
#pragma once

#include "ui/bus.hpp"
#include "ui/face_metrics.hpp"
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
    /// Whether it also sends a whole bitmap that is not enlarged: send().
    static constexpr bool sends = false;
    template <uint8_t most_columns, class Image>
    static void send(const Image&, uint16_t, uint8_t, uint8_t, Colours) {}

    /// Looks up a glyph of a face.
    template <class Image>
    static GlyphMetrics metrics(const Image& rom, uint16_t face_at, uint8_t number) {
        return FaceMetrics<Image>{rom, face_at}.of_context(number);
    }

    /// Decides the pixels of a row.
    /// @param chances  Of ground in 1/256, by context: where they stand in the image.
    /// @param history  A byte a column, see context_model::above and above_that; afterwards moved on by the new
    ///                 row. Two more bytes of 0 stand after the last column.
    /// @return         Not 0: the row has ink.
    /// @pre            columns is at least 1.
    template <class Image>
    static uint8_t row(const Image& rom,
                       ContextStream& stream,
                       uint16_t chances,
                       uint8_t* history,
                       uint8_t columns) {
        using namespace context_model;
        // Bit 6: the pixel to the left; 5-2: the row above from one column to the right to two to the left; 1-0:
        // the row above that, this column and the one to the left.
        uint8_t context = byte(left_edge | history[0] >> 1 | history[1]);
        uint8_t before = above;  // the column to the left, as it was
        uint8_t any = 0;
        for (; columns != 0; --columns, ++history) {
            const bool ink = decide(rom, stream, rom.u8(word(chances + context)));
            const uint8_t now = ink ? above : uint8_t{0};
            any = byte(static_cast<unsigned>(any) | now);
            const uint8_t was = *history;
            *history = byte(now | (before & above) >> 4);
            before = was;
            context = byte((context >> 1 & moved_on) | history[2] | (ink ? left : 0));
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

/// Columns above the first row: ground, and ink above that; ground to the right of them.
inline void begin_history(uint8_t* history, uint8_t columns) {
    for (; columns != 0; --columns) {
        *history++ = context_model::above_that;
    }
    history[0] = 0;
    history[1] = 0;
}

/// A row has repeated: moves the chances of the next repeat on, and makes the two rows above the same.
inline void count_repeat(uint8_t& chances, uint8_t* history, uint8_t columns) {
    const bool again = (chances & context_model::repeats) != 0;
    if ((chances & context_model::most_repeats) == 0) {
        ++chances;
    }
    if (again) {
        return;
    }
    uint8_t before = context_model::above_that;
    for (; columns != 0; --columns, ++history) {
        const uint8_t now = byte(*history & context_model::above);
        *history = byte(static_cast<unsigned>(now) | before);
        before = byte(now >> 4);
    }
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
        uint8_t history[most_columns + 2];
        uint8_t* const end = history + width_;
        begin_history(history, width_);
        uint8_t chances = context_model::pixels;
        bool ink = false;
        uint16_t length = 0;
        for (uint8_t y = height_; y != 0; --y) {
            if (!decides_to_repeat<Core>(rom_, stream_, chances)) {
                chances = Core::row(rom_, stream_, header::bytes, history, width_) != 0
                              ? context_model::pixels + context_model::bank
                              : context_model::pixels;
            } else {
                count_repeat(chances, history, width_);
            }
            for (uint8_t i = times; i != 0; --i) {
                for (const uint8_t* column = history; column != end; ++column) {
                    if (((*column & context_model::above) != 0) != ink) {
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

// A row of a glyph or picture as runs of ground and ink, and the sender that turns rows into pushes.
#pragma once

#include "ui/geometry.hpp"
#include "ui/rom.hpp"

#include <stdint.h>

namespace dialplate {

/// Ink and ground of a glyph, as the display holds them.
struct Colours {
    uint16_t ink, ground;
};

/// One row, or a part of one, from the left: ground, ink, ground, ink ... in pixels of the glass. A run may
/// be 0 long.
struct Row {
    uint16_t runs[2 * most_strokes];
    uint8_t used = 0;     // of runs; even
    const uint8_t times;  // pixels of the glass that a pixel of the bitmap becomes

    explicit Row(uint8_t enlarged) : times(enlarged) {}

    void clear() { used = 0; }
    /// Whether there is no room for another stroke.
    bool full() const { return used == 2 * most_strokes; }
    /// Adds a run, in pixels of the bitmap; two of the same colour become one. If it is full, what comes is
    /// dropped: only damaged data comes so far.
    __attribute__((noinline)) void add(bool ink, uint16_t pixels) {
        if (used == 0 || (!ink && runs[used - 1] != 0)) {
            if (full()) {
                return;
            }
            runs[used] = 0;
            runs[used + 1] = 0;
            used = byte(used + 2u);
        }
        uint16_t& run = runs[used - (ink ? 1 : 2)];
        run = word(run + static_cast<unsigned>(pixels) * times);
    }
};

/// Sends rows. Ground that ends a row and begins the next is one push.
template <class Bus>
class RowSender {
public:
    RowSender(Bus& bus, Colours colours) : bus_(bus), colours_(colours) {}

    const Colours& colours() const { return colours_; }

    __attribute__((noinline)) void send(const Row& row) {
        const uint16_t* run = row.runs;
        uint16_t ground = ground_;
        for (uint8_t strokes = byte(row.used / 2u); strokes != 0; --strokes) {
            ground = word(ground + *run++);
            const uint16_t ink = *run++;
            if (ink != 0 || ground > most_) {
                bus_.push(colours_.ground, ground);
                bus_.push(colours_.ink, ink);
                ground = 0;
            }
        }
        ground_ = ground;
    }
    /// A run of its own, after which no row is to follow.
    __attribute__((noinline)) void run(bool ink, uint16_t pixels) {
        bus_.push(ink ? colours_.ink : colours_.ground, pixels);
    }
    /// After the last row.
    void finish() { bus_.push(colours_.ground, ground_); }

private:
    // A row has at most 1,023 pixels.
    static constexpr uint16_t most_ = 0x8000;

    Bus& bus_;
    const Colours colours_;
    uint16_t ground_ = 0;
};

}  // namespace dialplate

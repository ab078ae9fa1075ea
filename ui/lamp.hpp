// Lamp: shows one state of a value; lit while the value is there, or in the present choice's words.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/values.hpp"

namespace dialplate {

template <class Bus, class Parts>
struct LampArt {
    static constexpr uint8_t shown_bytes = 1;
    // value, face, behind, lit x 3, unlit x 3, radius, edge
    static constexpr uint8_t fixed_bytes = 11;

    /// 0 or 1: unlit or lit. A lamp that shows a choice's words: the number of the choice.
    static uint8_t state(Reader from, const Values& values) {
        const int32_t now = values.get(from.u8());
        from.skip(fixed_bytes - 1);
        const uint8_t flags = from.u8();
        if (flags & lamp_flag::when) {
            return now == from.number((flags & lamp_flag::wide) != 0) ? 1 : 0;
        }
        return byte(static_cast<uint32_t>(now));
    }

    static void draw(Pen<Bus, Parts>& pen, Rect r, Reader from, uint8_t state) {
        from.skip(1);
        const uint8_t face = from.u8(), behind = from.u8();
        Reader tones = from;
        from.skip(6);
        const uint8_t radius = from.u8(), edge = from.u8(), flags = from.u8();
        const bool fixed_words = (flags & lamp_flag::when) != 0;
        if (fixed_words) {
            from.number((flags & lamp_flag::wide) != 0);
            if (state == 0) {
                tones.skip(3);
            }
        }
        const uint8_t ink = tones.u8(), fill = tones.u8(), edge_paint = tones.u8();
        const BoxStyle style{radius,
                             edge,
                             pen.colour(ink),
                             pen.colour(fill),
                             pen.colour(edge_paint),
                             pen.colour(behind)};
        uint8_t count = from.u8();
        if (!fixed_words) {
            const bool known = state < count;
            for (uint8_t i = 0; known && i < state; ++i) {
                from.skip(point_bytes + 2);
            }
            count = known ? 1 : 0;
        }
        draw_box(pen, r, style, face, from, count);
    }
};

}  // namespace dialplate

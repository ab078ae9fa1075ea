// Key: a touch area with a legend, in one of four states.
#pragma once

#include "ui/box.hpp"
#include "ui/image_format.hpp"
#include "ui/values.hpp"

namespace dialplate {

enum class KeyState : uint8_t { idle, pressed, active, disabled };

template <class Bus, class Parts>
struct KeyArt {
    static constexpr uint8_t shown_bytes = 1;

    /// The fields of a key that decide more than its looks.
    struct Manner {
        uint8_t flags;
        bool active, enabled;
        uint8_t tap_page, hold_page;  ///< Valid when the flags say so.
    };

    static constexpr uint8_t fixed_bytes = 6;  // look, behind, radius, edge, face, flags

    /// Reads the rules of a key; `from` is left at the count of its lines.
    static Manner manner(Reader& from, const Values& values) {
        from.skip(fixed_bytes - 1);
        Manner m{from.u8(), false, true, 0, 0};
        if (m.flags & key_flag::active) {
            const uint8_t value = from.u8();
            m.active = values.get(value) == from.number((m.flags & key_flag::wide) != 0);
        }
        if (m.flags & key_flag::enabled_by) {
            m.enabled = values.get(from.u8()) != 0;
        }
        if (m.flags & key_flag::page) {
            m.tap_page = from.u8();
        }
        if (m.flags & key_flag::hold_page) {
            m.hold_page = from.u8();
        }
        return m;
    }

    static KeyState state(Reader from, const Values& values, bool pressed) {
        const Manner m = manner(from, values);
        return !m.enabled ? KeyState::disabled
               : pressed  ? KeyState::pressed
               : m.active ? KeyState::active
                          : KeyState::idle;
    }

    static void draw(
        Pen<Bus, Parts>& pen, Rect r, Reader from, const Values& values, KeyState state) {
        Reader lines = from;
        manner(lines, values);
        const uint8_t look = from.u8(), behind = from.u8(), radius = from.u8(), edge = from.u8(),
                      face = from.u8();
        Reader tones(pen.rom,
                     word(pen.rom.u16(header::at_looks) + static_cast<uint32_t>(look) * look_bytes +
                          3u * static_cast<uint8_t>(state)));
        const uint8_t ink = tones.u8(), fill = tones.u8(), edge_paint = tones.u8();
        const BoxStyle style{radius,
                             edge,
                             pen.colour(ink),
                             pen.colour(fill),
                             pen.colour(edge_paint),
                             pen.colour(behind)};
        const uint8_t count = lines.u8();
        draw_box(pen, r, style, face, lines, count);
    }
};

}  // namespace dialplate

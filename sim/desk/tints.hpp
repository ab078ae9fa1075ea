// The colours of the window: a warm grey panel under quiet light, so that the glass is the brightest
// thing in sight. Words meet WCAG 2.2 SC 1.4.3 (4.5:1) on what they stand on.
#pragma once

#include "sim/desk/canvas.hpp"
#include "sim/layout/finding.hpp"

namespace dialplate::tint {

constexpr Colour bench = 0x161413;
constexpr Colour panel_top = 0x34302C;
constexpr Colour panel_bottom = 0x2B2825;
constexpr Colour panel_light = 0x4A453F;   ///< Upper edge of the plate, where the light falls.
constexpr Colour panel_shadow = 0x1D1B19;  ///< Its lower edge.

constexpr Colour bezel_above =
    0x141312;  ///< The trim slopes inwards: above it turns from the light,
constexpr Colour bezel_below = 0x3B3733;  ///< below it faces the light,
constexpr Colour bezel_left = 0x1E1C1A;
constexpr Colour bezel_right = 0x242120;
constexpr Colour module =
    0x070707;  ///< What shows around the glass in an opening that is too large.

constexpr Colour engraved = 0xD6CFC4;  ///< Titles and captions on the panel.
constexpr Colour quiet = 0xA79F93;     ///< Second to them: rules, measures.
constexpr Colour rule = 0x7C756B;      ///< Ticks and dividing lines; no words.

constexpr Colour knob_skirt = 0x12100F;
constexpr Colour knob_ridge_light = 0x57514A;
constexpr Colour knob_ridge_dark = 0x24211F;
constexpr Colour knob_top = 0x4B4640;
constexpr Colour knob_bottom = 0x35312D;
constexpr Colour knob_edge = 0x6A635B;
constexpr Colour dimple = 0x252220;

constexpr Colour strip = 0x1E1C1A;
constexpr Colour strip_line = 0x3A3632;
constexpr Colour must = 0xFF7A66;
constexpr Colour should = 0xF2B84B;
constexpr Colour note = 0x8FB8D8;
constexpr Colour fine = 0x9CC77D;
constexpr Colour flash_taken = 0x6B645B;
constexpr Colour flash_display = 0xD9B36C;
constexpr Colour flash_left = 0x3A3632;

constexpr Colour side = 0x211F1C;    ///< Ground of the side.
constexpr Colour raised = 0x2B2825;  ///< What lies over it: lists, tips.
constexpr Colour well = 0x171513;    ///< Where something can be typed.
constexpr Colour well_lit = 0x100F0E;
constexpr Colour button = 0x35312D;
constexpr Colour button_lit = 0x45403A;
constexpr Colour lit = 0xE9C46A;  ///< What is chosen or switched on.

}  // namespace dialplate::tint

namespace dialplate {

[[nodiscard]] constexpr Colour colour_of(Severity severity) {
    switch (severity) {
        case Severity::error:
        case Severity::must:
            return tint::must;
        case Severity::should:
            return tint::should;
        case Severity::note:
            break;
    }
    return tint::note;
}

}  // namespace dialplate

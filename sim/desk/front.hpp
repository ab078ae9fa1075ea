// Draws the front panel: the plate, the rules, the bezel, the glass in its opening and the knob.
#pragma once

#include "sim/desk/canvas.hpp"
#include "sim/desk/plan.hpp"
#include "sim/desk/typeface.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

/// The window's faces.
struct Faces {
    Typeface small;  ///< 9 rows.
    Typeface words;  ///< 13 rows.
    Typeface large;  ///< 14 rows.
};

/// The bench with the bare plate on it.
void draw_plate(Canvas& canvas, const Plan& plan);

/// Everything that stays while the receiver runs: plate, title, rules, bezel.
void draw_panel(Canvas& canvas, const Plan& plan, const Faces& faces, const std::string& title);

/// The line below the bezel.
struct CaptionWords {
    std::string module;  ///< Left.
    std::string page;    ///< Right.
    friend bool operator==(const CaptionWords&, const CaptionWords&) = default;
};
void draw_caption(Canvas& canvas, const Plan& plan, const Faces& faces, const CaptionWords& words);

/// The glass, as far as the opening shows it.
/// @param pixels  RGB565, row-major, `glass_width` a row, as many rows as the plan's glass.
/// @param part    In glass pixels: what of it is drawn.
/// @return What was drawn on, in screen pixels.
Area draw_glass(Canvas& canvas,
                const Plan& plan,
                const std::vector<std::uint16_t>& pixels,
                int glass_width,
                const Box& part);

/// @param turned  Turns to the right since the beginning, 1 once around.
void draw_knob(Canvas& canvas, const Plan& plan, double turned);

/// Caption below the knob.
void draw_knob_caption(Canvas& canvas,
                       const Plan& plan,
                       const Faces& faces,
                       const std::string& step);

}  // namespace dialplate

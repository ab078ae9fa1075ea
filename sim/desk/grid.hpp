// The grid on which places catch: its lines in glass pixels, the controls for it, and how it is drawn.
#pragma once

#include "sim/desk/side_parts.hpp"
#include "sim/edit/placing.hpp"

#include <imgui.h>

namespace dialplate {

/// 0 while it is off.
[[nodiscard]] GridPitch pitch_of(const Grid& grid, const Layout& layout);

/// A row in the side: on or off, the distance, and its unit.
void draw_grid_row(SideFrame& side);

/// Thin lines over the glass; where they would lie closer than can be looked at, every second, fifth, tenth.
void draw_grid(ImDrawList& draw, const Bench& bench);

}  // namespace dialplate

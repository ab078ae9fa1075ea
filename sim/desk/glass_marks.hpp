// What lies over the glass: the chosen items with their grips, the lines they catch on, the item that a finding
// speaks of, a finger, and the windows that were just sent.
#pragma once

#include "sim/desk/side_parts.hpp"

namespace dialplate {

/// Draws them below everything else of the side.
void draw_marks(SideFrame& side);
/// Where the touches of a trial landed on the present page. @pre There is a prototype.
void draw_trial_marks(const Bench& bench, float unit);

/// Screen pixels from a grip's middle to its edge.
constexpr int grip_reach = 4;

}  // namespace dialplate

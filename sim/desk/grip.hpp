// A hand on the knob: turns the mouse's way around the knob into detents.
#pragma once

#include "sim/desk/canvas.hpp"

namespace dialplate {

/// Clicks of the tuning knob in one turn.
constexpr int detents_a_turn = 24;

class Grip {
public:
    /// Takes hold at a place of the window.
    void take(const Circle& knob, int x, int y);
    /// Moves on; @return whole detents since the last call, right is positive.
    int move(const Circle& knob, int x, int y);
    /// Turns by a part of a detent, as a fine wheel does; @return whole detents that fell.
    int nudge(double detents);
    /// Turns to the right since the beginning, for drawing.
    [[nodiscard]] double turned() const { return turned_; }

private:
    double angle_ = 0.0;  ///< Of the hand, radians, clockwise from above.
    double turned_ = 0.0;
    double rest_ = 0.0;  ///< Detents that have not fallen yet, -1 < rest < 1.
};

}  // namespace dialplate

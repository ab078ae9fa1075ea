// The outline of a card on the screen, drawn out until it is as large as the card that is held to it.
#pragma once

#include "sim/desk/canvas.hpp"

namespace dialplate {

// Bank cards, identity cards and driving licences. Source: ISO/IEC 7810, format ID-1.
constexpr double card_width_mm = 85.60;
constexpr double card_height_mm = 53.98;
constexpr double card_corner_mm = 3.18;  ///< Radius; from memory, for drawing alone.

class Card {
public:
    /// @param left, top  Of the outline, in the window.
    Card(int left, int top, double pixels_per_mm);

    [[nodiscard]] Area area() const;
    [[nodiscard]] double pixels_per_mm() const { return width_ / card_width_mm; }

    /// Wider by screen pixels; negative: narrower.
    void widen(int by);

    // A hand: right and lower edge and the corner between them size it, what is inside moves it.
    void press(int x, int y);
    void move(int x, int y);
    void release() { hold_ = Hold::nothing; }

private:
    enum class Hold { nothing, right, lower, corner, all };
    void set_width(int width);

    int left_, top_, width_ = 0;
    Hold hold_ = Hold::nothing;
    int off_x_ = 0, off_y_ = 0;  ///< From the hand to what it holds.
};

}  // namespace dialplate

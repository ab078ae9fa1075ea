#include "sim/desk/card.hpp"

#include "sim/desk/screen.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace dialplate {
namespace {

/// Screen pixels beside an edge within which a hand takes hold of it.
constexpr int card_reach = 12;

int nearest(double value) {
    return static_cast<int>(std::lround(value));
}

}  // namespace

Card::Card(int left, int top, double pixels_per_mm) : left_(left), top_(top) {
    set_width(nearest(card_width_mm * pixels_per_mm));
}

Area Card::area() const {
    return {left_, top_, width_, nearest(width_ * card_height_mm / card_width_mm)};
}

void Card::set_width(int width) {
    width_ = std::clamp(width,
                        static_cast<int>(std::ceil(card_width_mm * least_pixels_per_mm)),
                        static_cast<int>(card_width_mm * most_pixels_per_mm));
}

void Card::widen(int by) {
    set_width(width_ + by);
}

void Card::press(int x, int y) {
    const Area card = area();
    if (!grown(card, card_reach).holds(x, y)) return;
    const bool right = std::abs(x - card.right()) <= card_reach;
    const bool lower = std::abs(y - card.bottom()) <= card_reach;
    hold_ = right && lower ? Hold::corner : right ? Hold::right : lower ? Hold::lower : Hold::all;
    off_x_ = (hold_ == Hold::all ? left_ : card.right()) - x;
    off_y_ = (hold_ == Hold::all ? top_ : card.bottom()) - y;
}

void Card::move(int x, int y) {
    const int wide = x + off_x_ - left_;
    const int as_high = nearest((y + off_y_ - top_) * card_width_mm / card_height_mm);
    switch (hold_) {
        case Hold::nothing:
            break;
        case Hold::right:
            set_width(wide);
            break;
        case Hold::lower:
            set_width(as_high);
            break;
        case Hold::corner:
            set_width(std::max(wide, as_high));
            break;
        case Hold::all:
            left_ = std::max(x + off_x_, 0);
            top_ = std::max(y + off_y_, 0);
            break;
    }
}

}  // namespace dialplate

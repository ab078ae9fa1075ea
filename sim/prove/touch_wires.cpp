#include "sim/prove/touch_wires.hpp"

#include <cmath>

namespace dialplate {
namespace {

constexpr double sheet_millivolts = 5000.0;

}  // namespace

WiredSheet::WiredSheet(Board& board, const TouchWires& wires) : board_(&board), wires_(wires) {
    board.supply_analog([this](int channel) { return millivolts(channel); });
}

void WiredSheet::press(double x, double y) {
    pressed_ = true;
    x_ = x;
    y_ = y;
}

int WiredSheet::millivolts(int channel) const {
    double share = 0.0;  // An unconnected wire drifts to ground here.
    if (pressed_) {
        if (high(wires_.x_plus) && low(wires_.x_minus) && channel == wires_.y_plus_channel) {
            share = x_;
        } else if (high(wires_.y_plus) && low(wires_.y_minus) &&
                   channel == wires_.x_minus_channel) {
            share = y_;
        } else if (high(wires_.y_minus) && low(wires_.x_plus)) {
            // y minus, part of the y plate, contact, part of the x plate, x plus.
            const double of_x = (1.0 - x_) * wires_.x_ohm;
            const double whole = y_ * wires_.y_ohm + wires_.contact_ohm + of_x;
            if (channel == wires_.x_minus_channel) share = of_x / whole;
            if (channel == wires_.y_plus_channel) share = (of_x + wires_.contact_ohm) / whole;
        }
    }
    return static_cast<int>(std::lround(share * sheet_millivolts));
}

}  // namespace dialplate

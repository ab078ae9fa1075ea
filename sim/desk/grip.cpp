#include "sim/desk/grip.hpp"

#include <cmath>
#include <numbers>

namespace dialplate {
namespace {

double angle_at(const Circle& knob, int x, int y) {
    return std::atan2(x + 0.5 - knob.x, knob.y - (y + 0.5));
}

}  // namespace

void Grip::take(const Circle& knob, int x, int y) {
    angle_ = angle_at(knob, x, y);
}

int Grip::move(const Circle& knob, int x, int y) {
    const double angle = angle_at(knob, x, y);
    // The short way around.
    const double way = std::remainder(angle - angle_, 2.0 * std::numbers::pi);
    angle_ = angle;
    return nudge(way / (2.0 * std::numbers::pi) * detents_a_turn);
}

int Grip::nudge(double detents) {
    turned_ += detents / detents_a_turn;
    rest_ += detents;
    // A hair short of a detent counts: three moves of a third are one.
    const int fallen = static_cast<int>(std::trunc(rest_ + std::copysign(1e-9, rest_)));
    rest_ -= fallen;
    return fallen;
}

}  // namespace dialplate

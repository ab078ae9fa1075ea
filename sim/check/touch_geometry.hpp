// Touch targets in millimetres: sizes, the circle rule of the spacing exception, and how often a finger
// that aims at the middle of a key hits it.
#pragma once

#include "sim/layout/units.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace dialplate {

/// One CSS pixel, taken as the fixed length: 1/96 inch (TCH-01). Fingers do not shrink with distance.
constexpr Millimetres css_pixel{25.4 / 96.0};
constexpr Millimetres least_target{24.0 *
                                   css_pixel.value};  ///< WCAG 2.2 SC 2.5.8 (TCH-02): 6.35 mm.
constexpr Millimetres thumb_tap{9.2};      ///< Parhi, Karlson, Bederson 2006, one tap (TCH-07).
constexpr Millimetres thumb_series{9.6};   ///< The same, a series of taps (TCH-08).
constexpr Millimetres advised_gap{3.0};    ///< Between edges, unless both are 9.6 mm (TCH-11).
constexpr Millimetres finger_spread{1.5};  ///< Standard deviation of a tap, each axis (TCH-22).

/// A target's bounding box on the glass.
struct Target {
    Millimetres left, top, right, bottom;

    [[nodiscard]] Millimetres width() const { return right - left; }
    [[nodiscard]] Millimetres height() const { return bottom - top; }
    [[nodiscard]] Millimetres narrowest() const { return std::min(width(), height()); }
};

/// The allowance for rounding in millimetre arithmetic: a millionth of a millimetre. A length that is
/// short by less is not short.
constexpr double length_slack = 1e-6;

/// Below the minimum in either direction; a box of 20 x 100 CSS pixels is undersized, too.
[[nodiscard]] inline bool undersized(const Target& target) {
    return target.narrowest().value < least_target.value - length_slack;
}

/// From the middle of `from` to the nearest point of `to`; 0 inside.
[[nodiscard]] inline Millimetres centre_to_target(const Target& from, const Target& to) {
    const double x = (from.left.value + from.right.value) / 2.0;
    const double y = (from.top.value + from.bottom.value) / 2.0;
    const double dx = std::max({to.left.value - x, 0.0, x - to.right.value});
    const double dy = std::max({to.top.value - y, 0.0, y - to.bottom.value});
    return Millimetres{std::hypot(dx, dy)};
}

[[nodiscard]] inline Millimetres centre_to_centre(const Target& a, const Target& b) {
    return Millimetres{
        std::hypot((a.left.value + a.right.value - b.left.value - b.right.value) / 2.0,
                   (a.top.value + a.bottom.value - b.top.value - b.bottom.value) / 2.0)};
}

/// Blank between the edges of two targets; 0 when they touch or overlap.
[[nodiscard]] inline Millimetres gap_between(const Target& a, const Target& b) {
    const double dx = std::max({b.left.value - a.right.value, 0.0, a.left.value - b.right.value});
    const double dy = std::max({b.top.value - a.bottom.value, 0.0, a.top.value - b.bottom.value});
    return Millimetres{std::hypot(dx, dy)};
}

/// How far an undersized target's circle is from meeting one other target, as the room there is and
/// the room it needs.
struct CircleRoom {
    Millimetres found;
    Millimetres needed;
    [[nodiscard]] bool enough() const { return found.value >= needed.value - length_slack; }
};

/// The circle rule for an undersized target and one other: a circle of 24 CSS pixels' diameter about
/// the middle of its bounding box meets neither the other target nor, if that is undersized as well,
/// the other's circle. Touching exactly passes. Returns the tighter of the two.
/// Source: WCAG 2.2 SC 2.5.8, spacing exception (TCH-03, TCH-A1).
[[nodiscard]] inline CircleRoom circle_room(const Target& small, const Target& other) {
    const Millimetres radius{least_target.value / 2.0};
    const CircleRoom to_target{centre_to_target(small, other), radius};
    if (!undersized(other)) return to_target;
    const CircleRoom to_circle{centre_to_centre(small, other), least_target};
    const double spare_target = to_target.found.value - to_target.needed.value;
    const double spare_circle = to_circle.found.value - to_circle.needed.value;
    return spare_circle < spare_target ? to_circle : to_target;
}

/// A finger: standard deviation of where it lands about where it aims.
struct FingerSpread {
    Millimetres across{finger_spread};
    Millimetres down{finger_spread};
};

/// Where a finger aims, from the middle of the key.
struct Aim {
    Millimetres across{0.0};
    Millimetres down{0.0};
};

/// The share of taps that land on a target when a finger aims at its middle, or beside it: the
/// integral of a bivariate normal over the box, 0..1. Source: TCH-24, TCH-25.
[[nodiscard]] inline double hit_probability(const Target& target,
                                            const FingerSpread& finger = {},
                                            const Aim& aim = {}) {
    const auto along = [](double length, double off, double spread) {
        const double k = spread * std::numbers::sqrt2;
        return 0.5 * (std::erf((length / 2.0 - off) / k) - std::erf((-length / 2.0 - off) / k));
    };
    return along(target.width().value, aim.across.value, finger.across.value) *
           along(target.height().value, aim.down.value, finger.down.value);
}

/// The least whole pixels that span a length.
[[nodiscard]] inline int pixels_over(Millimetres length, Millimetres pitch) {
    return static_cast<int>(std::ceil(length / pitch - 1e-9));
}

/// How near the middle of a round finger pad, pressed on the glass, comes to an edge that stands above it:
/// a ball of radius r beside a step of height d touches it at sqrt(d (2 r - d)), or with its side, at r,
/// where the step is as high as that. 0 beside no step.
/// Source: Pythagoras; the pad does not give way.
[[nodiscard]] inline Millimetres pad_reach(Millimetres finger, Millimetres step) {
    const double radius = finger.value / 2.0;
    if (step.value >= radius) return Millimetres{radius};
    return Millimetres{std::sqrt(std::max(0.0, step.value * (2.0 * radius - step.value)))};
}

}  // namespace dialplate

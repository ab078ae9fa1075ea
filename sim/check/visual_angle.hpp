// How large a letter is at the eye.
#pragma once

#include "sim/layout/units.hpp"

#include <cassert>
#include <cmath>
#include <numbers>

namespace dialplate {

/// A height on the glass and the eye in front of it, the line of sight square to the glass.
struct Sighting {
    Millimetres height;    ///< Of a capital without accents, or of a digit; > 0.
    Millimetres distance;  ///< Eye to glass, > 0.
};

constexpr double arc_minutes_a_radian = 180.0 * 60.0 / std::numbers::pi;

/// The angle that a height subtends at the eye: above 0, below 10 800 minutes of arc (half a turn).
/// Source: geometry (LEG-03); NUREG-0700 Rev. 2, 1.3.1-4, gives the small-angle form.
[[nodiscard]] inline ArcMinutes visual_angle(const Sighting& sighting) {
    assert(sighting.height.value > 0.0 && sighting.distance.value > 0.0);
    return ArcMinutes{2.0 * std::atan2(sighting.height.value, 2.0 * sighting.distance.value) *
                      arc_minutes_a_radian};
}

/// The height that subtends an angle below half a turn: the inverse of `visual_angle`.
/// Source: geometry (LEG-01).
[[nodiscard]] inline Millimetres height_for(ArcMinutes angle, Millimetres distance) {
    return Millimetres{2.0 * distance.value * std::tan(angle.value / arc_minutes_a_radian / 2.0)};
}

/// A wanted angle, the eye, and the pitch of the pixels as the eye sees it (> 0).
struct AngleOnPixels {
    ArcMinutes angle;
    Millimetres distance;
    Millimetres pitch;
};

/// The least whole number of pixels that subtends at least that angle.
/// Source: LEG-10; the allowance of 1e-9 keeps an exact fit from being rounded up by the arithmetic.
[[nodiscard]] inline Pixels pixels_for(const AngleOnPixels& wanted) {
    assert(wanted.pitch.value > 0.0);
    return Pixels{static_cast<int>(
        std::ceil(height_for(wanted.angle, wanted.distance) / wanted.pitch - 1e-9))};
}

/// A height as it appears when the line of sight is tilted against it: foreshortened by the cosine.
[[nodiscard]] inline Millimetres foreshortened(Millimetres height, Degrees tilt) {
    return height * std::cos(tilt.value * std::numbers::pi / 180.0);
}

}  // namespace dialplate

// Which pixels of the glass the front panel hides: the opening alone, seen straight on, and its depth, for
// an eye at a place of its own.
//
// Modelled: a rectangular opening with square edges, `depth` before the glass; one eye, before the middle of
// the opening, raised or lowered by the tilt of the line of sight. Not modelled: a bevel, a cover glass, the
// second eye, a head that moves.
#pragma once

#include "sim/layout/layout.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace dialplate {

/// Millimetres of the glass inside the upper and the lower edge of the opening that the bezel's depth hides.
struct Shade {
    Millimetres top, bottom;
};

/// Pixels that are seen whole: half-open; none when an end is not beyond its start.
struct SeenPixels {
    int left = 0, top = 0, right = 0, bottom = 0;

    [[nodiscard]] bool has(int x, int y) const {
        return x >= left && x < right && y >= top && y < bottom;
    }
};

/// What the depth hides from an eye `viewing.distance` from the middle of the opening, along a line of sight
/// that is tilted by `viewing.tilt` (above 0: the eye is higher). A ray from the eye over an edge at half
/// the opening's height a, in front of the glass by the depth d, meets the glass beyond it by
/// d (e - a) / (z - d), where e = D sin(tilt) is the eye's height and z = D cos(tilt) its distance from the
/// plane of the glass. An eye that is not above the upper edge sees behind it, which hides nothing.
/// Source: similar triangles.
[[nodiscard]] inline Shade shade_of(const Opening& opening, const Viewing& viewing) {
    const double tilt = viewing.tilt.value * std::numbers::pi / 180.0;
    const double height = viewing.distance.value * std::sin(tilt);
    const double before = viewing.distance.value * std::cos(tilt) - opening.depth.value;
    const double half = opening.height.value / 2.0;
    const double above = std::max(0.0, height - half), below = std::max(0.0, -height - half);
    // An eye in the plane of the panel, or behind it, sees nothing over that edge.
    const auto hidden = [&](double beyond) {
        if (beyond <= 0.0) return Millimetres{0.0};
        if (before <= 0.0) return opening.height;
        return std::min(opening.height, Millimetres{opening.depth.value * beyond / before});
    };
    return {.top = hidden(above), .bottom = hidden(below)};
}

/// The pixels of the glass that lie wholly in the opening and outside the shade. The result may reach beyond
/// the glass where the opening does.
[[nodiscard]] inline SeenPixels seen_pixels(const Layout& layout,
                                            const Opening& opening,
                                            const Shade& shade = {}) {
    constexpr double between_pixels = 1e-9;  // an edge exactly between two pixels hides neither
    const double across = layout.pitch_x().value, down = layout.pitch_y().value;
    const auto first = [](double edge, double pitch) {
        return static_cast<int>(std::ceil(edge / pitch - between_pixels));
    };
    const auto past_last = [](double edge, double pitch) {
        return static_cast<int>(std::floor(edge / pitch + between_pixels));
    };
    return {
        .left = first(opening.left.value, across),
        .top = first(opening.top.value + shade.top.value, down),
        .right = past_last(opening.left.value + opening.width.value, across),
        .bottom = past_last(opening.top.value + opening.height.value - shade.bottom.value, down)};
}

}  // namespace dialplate

// Marks drawn over a picture: areas, outlines, ellipses. What lies outside the picture is left out.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// A colour laid over what is there.
struct Wash {
    std::uint32_t colour = 0xFFFFFF;
    double cover =
        1.0;  ///< 0: what is there stays; 1: the colour alone. Mixed as coded, not as light.
};

/// One colour over another.
[[nodiscard]] std::uint32_t washed(std::uint32_t ground, const Wash& wash);

/// Box in pixels of the picture.
void fill(Rgb888& picture, const Box& box, const Wash& wash);

/// The rim of a box, `line` pixels wide, inside it.
void outline(Rgb888& picture, const Box& box, int line, const Wash& wash);

/// An ellipse by its middle and half axes, in pixels of the picture; pixel (0, 0) covers [0, 1) x [0, 1).
struct Ellipse {
    double x = 0, y = 0;
    double across = 1, down = 1;
};

/// The line of an ellipse, `line` pixels wide, smoothed. `dashes`: blank for half of each of so many parts.
void trace(Rgb888& picture, const Ellipse& ellipse, double line, const Wash& wash, int dashes = 0);

}  // namespace dialplate

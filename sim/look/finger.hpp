// The keys of a page as a finger meets them.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// A picture of the glass, each of whose pixels is a square of `scale` x `scale`.
struct ScaledGlass {
    const Rgb888& picture;
    int scale = 1;
};

/// Draws over every key of a page: the target with a tint for how often a finger that aims at its middle hits
/// it (green from 99 %, amber from 95 %, red below), that share in words, below it the share that lands on
/// other keys where that is 0.1 % or more, the ellipse that holds 95 % of the taps (line), and the pad of the
/// finger (dashes). Scatter and pad are the layout's (`touch`).
/// @param labels  Face with the ASCII characters; what it lacks is not written.
Rgb888 with_finger(const ScaledGlass& glass,
                   const Layout& layout,
                   int page,
                   const RasterFace& labels);

}  // namespace dialplate

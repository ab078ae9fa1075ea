// The glass behind the front panel: what the opening and the depth of the bezel hide.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/look/finger.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// Draws over a picture of the glass what the reader cannot see: pixels behind the panel (red, hatched one
/// way), pixels that the bezel's depth hides along the line of sight (amber, hatched the other way), and the
/// outline of each item of the page that loses some. Whole pixels are hidden even where it is a part of one.
/// A layout without an opening comes back as it was. Geometry: sim/check/bezel_geometry.hpp.
Rgb888 behind_panel(const ScaledGlass& glass, const Layout& layout, int page);

}  // namespace dialplate

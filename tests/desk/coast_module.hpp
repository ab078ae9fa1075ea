// A display for tests of what is drawn to scale.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate {

/// A 2.8 inch module, 240x320 on 43.2 mm x 57.6 mm (0.18 mm a pixel), turned on its side, behind an opening.
inline Layout coast_module(const Opening& opening) {
    Layout layout;
    layout.display.width = 240;
    layout.display.height = 320;
    layout.display.active_width = Millimetres{43.2};
    layout.display.active_height = Millimetres{57.6};
    layout.turn = 90;
    layout.opening = opening;
    return layout;
}

}  // namespace dialplate

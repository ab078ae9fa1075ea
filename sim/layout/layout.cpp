#include "sim/layout/layout.hpp"

namespace dialplate {
namespace {

Millimetres pitch(Millimetres length, int pixels) {
    return Millimetres{pixels > 0 ? length.value / pixels : 0.0};
}

}  // namespace

Millimetres Layout::pitch_x() const {
    return turn % 180 == 0 ? pitch(display.active_width, display.width)
                           : pitch(display.active_height, display.height);
}

Millimetres Layout::pitch_y() const {
    return turn % 180 == 0 ? pitch(display.active_height, display.height)
                           : pitch(display.active_width, display.width);
}

}  // namespace dialplate

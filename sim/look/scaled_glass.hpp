// A picture of the glass at a whole-number scale, for what is drawn over it.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

namespace dialplate {

/// A picture of the glass, each of whose pixels is a square of `scale` x `scale`.
struct ScaledGlass {
    const Rgb888& picture;
    int scale = 1;

    /// A box of the glass in pixels of the picture.
    [[nodiscard]] Box enlarged(const Box& box) const {
        return {box.x * scale, box.y * scale, box.width * scale, box.height * scale};
    }
    /// Width of a line that stays thin at every scale.
    [[nodiscard]] int hairline() const { return scale < 2 ? 1 : scale / 2; }
};

}  // namespace dialplate

// The glass as it is looked at: through an eye at a distance, in a room's light, behind the panel.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"
#include "sim/look/rgb888.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace dialplate {

/// What lies between the glass and the judgement of it.
struct Aids {
    bool eye = false;            ///< Blurs as an eye at the distance does.
    double acuity = 1.0;         ///< Decimal.
    double distance_mm = 500.0;  ///< Eye to glass.
    bool room = false;           ///< Lifts black by what the room adds.
    double light_lux = 300.0;
    std::optional<int> vision;  ///< Index into all_visions: which cone is missing.
    bool panel = false;         ///< Marks what the front panel hides.
    bool fingers = false;       ///< Marks how often a finger hits each key.
    bool grid = false;          ///< Millimetres on the glass.
    [[nodiscard]] bool any() const { return eye || room || vision || panel || fingers || grid; }
    friend bool operator==(const Aids&, const Aids&) = default;
};

/// A glass to be looked at.
struct GlassPicture {
    const Layout& layout;
    int page = 0;
    const std::vector<std::uint16_t>& pixels;  ///< RGB565, row-major, glass_width a row.
};

/// The glass through the aids, each of its pixels a square of `scale` x `scale`.
/// @param labels  Face for the words that the aids write.
Rgb888 looked_at(const GlassPicture& glass, const Aids& aids, int scale, const RasterFace& labels);

}  // namespace dialplate

// A colour that would be told apart: the cure that contrast findings offer.
#pragma once

#include "sim/check/contrast.hpp"

#include <cstdint>
#include <optional>

namespace dialplate {

/// An ink on its ground, as the display holds them, and the contrast it should reach.
struct InkWanted {
    std::uint16_t ink = 0;
    std::uint16_t ground = 0;
    double ratio = 1.0;
};

/// The first colour on the way from the ink to white, or to black, that reaches the contrast; 0xRRGGBB
/// as the glass shows it. Of the two ways the shorter; none when neither gets there.
[[nodiscard]] inline std::optional<std::uint32_t> ink_that_reaches(const InkWanted& wanted) {
    constexpr int steps = 64;  // twice the 32 levels of red and blue: no shade is passed over
    const std::uint32_t from = expand_rgb565(wanted.ink);
    const double ground = relative_luminance(expand_rgb565(wanted.ground));
    for (int step = 1; step <= steps; ++step) {
        for (const int goal : {255, 0}) {
            std::uint32_t mixed = 0;
            for (const int shift : {16, 8, 0}) {
                const int channel = static_cast<int>(from >> shift & 255u);
                const int moved = channel + (goal - channel) * step / steps;
                mixed |= static_cast<std::uint32_t>(moved) << shift;
            }
            const std::uint32_t shown = expand_rgb565(pack_rgb565(mixed));
            if (contrast_ratio(relative_luminance(shown), ground) >= wanted.ratio) return shown;
        }
    }
    return std::nullopt;
}

}  // namespace dialplate

// A colour that would be told apart: the cure that contrast findings offer.
#pragma once

#include "sim/check/contrast.hpp"
#include "sim/colour/vision.hpp"

#include <cstdint>
#include <optional>

namespace dialplate {

/// The first colour on the way from an ink to white, or to black, that is good enough; 0xRRGGBB as the
/// glass shows it. Of the two ways the shorter; none when neither gets there.
/// @param ink     As the display holds it.
/// @param enough  Whether a colour 0xRRGGBB will do.
template <class Enough>
[[nodiscard]] std::optional<std::uint32_t> nearest_ink(std::uint16_t ink, Enough enough) {
    constexpr int steps = 64;  // twice the 32 levels of red and blue: no shade is passed over
    const std::uint32_t from = expand_rgb565(ink);
    for (int step = 1; step <= steps; ++step) {
        for (const int goal : {255, 0}) {
            std::uint32_t mixed = 0;
            for (const int shift : {16, 8, 0}) {
                const int channel = static_cast<int>(from >> shift & 255u);
                const int moved = channel + (goal - channel) * step / steps;
                mixed |= static_cast<std::uint32_t>(moved) << shift;
            }
            const std::uint32_t shown = expand_rgb565(pack_rgb565(mixed));
            if (enough(shown)) return shown;
        }
    }
    return std::nullopt;
}

/// An ink on its ground, as the display holds them, and the contrast it should reach.
struct InkWanted {
    std::uint16_t ink = 0;
    std::uint16_t ground = 0;
    double ratio = 1.0;
    std::optional<Vision> vision =
        std::nullopt;  ///< As such an eye sees them; absent: as they are.
};

/// The nearest ink that reaches the contrast ratio of the WCAG.
[[nodiscard]] inline std::optional<std::uint32_t> ink_that_reaches(const InkWanted& wanted) {
    const auto luminance = [&](std::uint32_t rgb888) {
        return wanted.vision ? relative_luminance(seen_with(*wanted.vision, light_of(rgb888)))
                             : relative_luminance(rgb888);
    };
    const double ground = luminance(expand_rgb565(wanted.ground));
    return nearest_ink(wanted.ink, [&](std::uint32_t shown) {
        return contrast_ratio(luminance(shown), ground) >= wanted.ratio;
    });
}

}  // namespace dialplate

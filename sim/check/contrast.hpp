// Contrast between two colours as the display holds them (RGB565), by the WCAG's definition.
//
// The result takes the panel's response for sRGB; the true response of a small panel is not known. The
// 0.05 in the ratio already stands for light reflected by the glass (CON-15).
#pragma once

#include "sim/colour/linear_light.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cstdint>

namespace dialplate {

/// Ratio of two relative luminances, 1..21, in either order.
/// Source: WCAG 2.2, "contrast ratio" (CON-04).
[[nodiscard]] inline double contrast_ratio(double luminance, double other) {
    return (std::max(luminance, other) + 0.05) / (std::min(luminance, other) + 0.05);
}

/// Contrast ratio of two colours as the display holds them.
[[nodiscard]] inline double contrast_on_glass(std::uint16_t rgb565, std::uint16_t other) {
    return contrast_ratio(relative_luminance(expand_rgb565(rgb565)),
                          relative_luminance(expand_rgb565(other)));
}

}  // namespace dialplate

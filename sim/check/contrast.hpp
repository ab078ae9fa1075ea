// Contrast between two colours as the display holds them (RGB565), by the WCAG's definition.
//
// The result takes the panel's response for sRGB; the true response of a small panel is not known. The
// 0.05 in the ratio already stands for light reflected by the glass (CON-15).
#pragma once

#include "sim/layout/colour.hpp"
#include "sim/layout/light.hpp"

#include <algorithm>
#include <cmath>
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

// Pass marks. Compared unrounded: 4.478 is below 4.5 (CON-05).
constexpr double text_contrast_least = 4.5;  ///< WCAG 2.2 SC 1.4.3 (AA).
constexpr double large_text_contrast_least =
    3.0;                                         ///< The same, from 18 pt, or 14 pt bold (CON-06).
constexpr double graphics_contrast_least = 3.0;  ///< WCAG 2.2 SC 1.4.11 (AA).

}  // namespace dialplate

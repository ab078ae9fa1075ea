// Contrast between two colours as the display holds them (RGB565), by the WCAG's definition.
//
// The result takes the panel's response for sRGB; the true response of a small panel is not known. The
// 0.05 in the ratio already stands for light reflected by the glass (CON-15).
#pragma once

#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace dialplate {

/// One 8-bit sRGB channel as linear light, 0..1.
/// Source: WCAG 2.2, "relative luminance"; IEC 61966-2-1 (CON-01).
[[nodiscard]] inline double linear_light(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// Relative luminance of 0xRRGGBB: 0 black, 1 white.
/// Source: WCAG 2.2, "relative luminance" (CON-03).
[[nodiscard]] inline double relative_luminance(std::uint32_t rgb888) {
    return 0.2126 * linear_light(static_cast<std::uint8_t>(rgb888 >> 16)) +
           0.7152 * linear_light(static_cast<std::uint8_t>(rgb888 >> 8)) +
           0.0722 * linear_light(static_cast<std::uint8_t>(rgb888));
}

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

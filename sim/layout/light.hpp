// What a coded colour is in light.
#pragma once

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

}  // namespace dialplate

// Colours as light: sRGB codes to linear light and back, luminance, chromaticity.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace dialplate {

/// A colour in linear light, each part 0 to 1; beyond that it cannot be shown.
struct LinearRgb {
    double red = 0, green = 0, blue = 0;
};

/// One 8-bit sRGB channel as linear light, 0..1.
/// Source: WCAG 2.2, "relative luminance"; IEC 61966-2-1 (CON-01).
[[nodiscard]] inline double linear_light(std::uint8_t channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

/// The inverse of `linear_light`: the 8-bit code of a linear channel, clamped to 0..1 first.
/// Source: IEC 61966-2-1 (CON-01).
[[nodiscard]] inline std::uint8_t coded_channel(double linear) {
    const double l = std::clamp(linear, 0.0, 1.0);
    const double c = l <= 0.0031308 ? l * 12.92 : 1.055 * std::pow(l, 1.0 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(c * 255.0 + 0.5);
}

/// 0xRRGGBB as light.
[[nodiscard]] inline LinearRgb light_of(std::uint32_t rgb888) {
    return {.red = linear_light(static_cast<std::uint8_t>(rgb888 >> 16)),
            .green = linear_light(static_cast<std::uint8_t>(rgb888 >> 8)),
            .blue = linear_light(static_cast<std::uint8_t>(rgb888))};
}

/// Light as 0xRRGGBB; what cannot be shown is clamped channel by channel.
[[nodiscard]] inline std::uint32_t code_of(const LinearRgb& light) {
    return std::uint32_t{coded_channel(light.red)} << 16 |
           std::uint32_t{coded_channel(light.green)} << 8 |
           std::uint32_t{coded_channel(light.blue)};
}

/// Relative luminance: 0 black, 1 white.
/// Source: WCAG 2.2, "relative luminance" (CON-03).
[[nodiscard]] inline double relative_luminance(const LinearRgb& light) {
    return 0.2126 * light.red + 0.7152 * light.green + 0.0722 * light.blue;
}
[[nodiscard]] inline double relative_luminance(std::uint32_t rgb888) {
    return relative_luminance(light_of(rgb888));
}

}  // namespace dialplate

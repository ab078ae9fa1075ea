#include "sim/look/room_light.hpp"

#include "sim/look/linear_light.hpp"

#include <array>
#include <numbers>

namespace dialplate {

GlassLight glass_light(const Layout& layout, Lux illuminance) {
    constexpr double usual_white = 250.0;       // lower end of the modules in layouts/parts
    constexpr double usual_contrast = 500.0;    // a TN panel's
    constexpr double usual_reflectance = 0.04;  // one surface of bare glass, from memory
    const double white = layout.display.luminance_cd_m2.value_or(usual_white);
    return {.white = white,
            .black = white / layout.display.panel_contrast.value_or(usual_contrast),
            .reflected = illuminance.value *
                         layout.display.reflectance.value_or(usual_reflectance) / std::numbers::pi};
}

Rgb888 in_room_light(const Rgb888& picture, const GlassLight& light) {
    const double whole = light.white + light.reflected;
    const double lifted = (light.black + light.reflected) / whole;
    const double share = (light.white - light.black) / whole;
    // The same for every channel and pixel: a table of codes.
    std::array<std::uint32_t, 256> seen{};
    for (std::size_t code = 0; code < seen.size(); ++code)
        seen[code] = coded_channel(lifted + share * linear_light(static_cast<std::uint8_t>(code)));
    Rgb888 out = picture;
    for (std::uint32_t& pixel : out.pixels)
        pixel = seen[pixel >> 16 & 0xFF] << 16 | seen[pixel >> 8 & 0xFF] << 8 | seen[pixel & 0xFF];
    return out;
}

}  // namespace dialplate

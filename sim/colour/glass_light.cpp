#include "sim/colour/glass_light.hpp"

#include <algorithm>
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

double luminance_ratio(double luminance, double other) {
    return std::max(luminance, other) / std::min(luminance, other);
}

}  // namespace dialplate

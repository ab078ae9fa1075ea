#include "sim/image/reduce_picture.hpp"

#include "sim/layout/light.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// Linear light of red, green, blue, 0 to 1.
using Light = std::array<double, 3>;

Light light_of(std::uint32_t rgb888) {
    return {linear_light(static_cast<std::uint8_t>(rgb888 >> 16)),
            linear_light(static_cast<std::uint8_t>(rgb888 >> 8)),
            linear_light(static_cast<std::uint8_t>(rgb888))};
}

/// One pixel over what is behind it. Source: PNG specification (W3C, third edition), 13.16, alpha compositing.
Light laid_over(const std::uint8_t* rgba, const Light& behind) {
    const double opaque = rgba[3] / 255.0;
    Light light;
    for (std::size_t i = 0; i < light.size(); ++i) {
        light[i] = opaque * linear_light(rgba[i]) + (1.0 - opaque) * behind[i];
    }
    return light;
}

struct Lab {
    double lightness, green_red, blue_yellow;
};

/// Source: CIE 15:2004, 8.2.1 (L*a*b*); IEC 61966-2-1 (sRGB primaries and its white, D65). From memory.
Lab lab_of(const Light& light) {
    constexpr double to_xyz[3][3] = {
        {0.4124, 0.3576, 0.1805}, {0.2126, 0.7152, 0.0722}, {0.0193, 0.1192, 0.9505}};
    std::array<double, 3> f{};
    for (std::size_t i = 0; i < f.size(); ++i) {
        const auto& row = to_xyz[i];
        const double white = row[0] + row[1] + row[2];
        const double share = (row[0] * light[0] + row[1] * light[1] + row[2] * light[2]) / white;
        constexpr double knee = 6.0 / 29.0;
        f[i] = share > knee * knee * knee ? std::cbrt(share)
                                          : share / (3.0 * knee * knee) + 4.0 / 29.0;
    }
    return {116.0 * f[1] - 16.0, 500.0 * (f[0] - f[1]), 200.0 * (f[1] - f[2])};
}

double difference(const Lab& a, const Lab& b) {
    return std::hypot(
        a.lightness - b.lightness, a.green_red - b.green_red, a.blue_yellow - b.blue_yellow);
}

template <class Reduce>
Bitmap reduced(const ColourPicture& picture, bool tones, Reduce reduce) {
    Bitmap bitmap{picture.width, picture.height, {}, tones};
    bitmap.pixels.reserve(picture.rgba.size() / 4);
    for (std::size_t i = 0; i + 3 < picture.rgba.size(); i += 4) {
        bitmap.pixels.push_back(reduce(&picture.rgba[i]));
    }
    return bitmap;
}

}  // namespace

Bitmap reduce_to_ink(const ColourPicture& picture) {
    constexpr Light white{1.0, 1.0, 1.0};
    return reduced(picture, false, [&](const std::uint8_t* rgba) -> std::uint8_t {
        const Light light = laid_over(rgba, white);
        // IEC 61966-2-1; standards CON-03.
        const double luminance = 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2];
        return luminance < 0.5 ? 1 : 0;
    });
}

Bitmap reduce_to_tones(const ColourPicture& picture, const std::array<std::uint32_t, 4>& paints) {
    const Light ground = light_of(paints[0]);
    std::array<Lab, 4> labs{};
    std::transform(paints.begin(), paints.end(), labs.begin(), [](std::uint32_t paint) {
        return lab_of(light_of(paint));
    });
    return reduced(picture, true, [&](const std::uint8_t* rgba) {
        const Lab lab = lab_of(laid_over(rgba, ground));
        const auto nearest =
            std::min_element(labs.begin(), labs.end(), [&](const Lab& a, const Lab& b) {
                return difference(lab, a) < difference(lab, b);
            });
        return static_cast<std::uint8_t>(nearest - labs.begin());
    });
}

}  // namespace dialplate

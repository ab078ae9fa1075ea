#include "sim/image/reduce_picture.hpp"

#include "sim/colour/colour_space.hpp"

#include <algorithm>
#include <cstring>
#include <unordered_map>

namespace dialplate {
namespace {

/// One pixel over what is behind it. Source: PNG specification (W3C, third edition), 13.16, alpha compositing.
LinearRgb laid_over(const std::uint8_t* rgba, const LinearRgb& behind) {
    const double opaque = rgba[3] / 255.0;
    const auto mixed = [opaque](std::uint8_t front, double back) {
        return opaque * linear_light(front) + (1.0 - opaque) * back;
    };
    return {.red = mixed(rgba[0], behind.red),
            .green = mixed(rgba[1], behind.green),
            .blue = mixed(rgba[2], behind.blue)};
}

/// Each colour is reduced once: pictures have few, and colour differences take long.
template <class Reduce>
Bitmap reduced(const ColourPicture& picture, bool tones, Reduce reduce) {
    Bitmap bitmap{picture.width, picture.height, {}, tones};
    bitmap.pixels.reserve(picture.rgba.size() / 4);
    std::unordered_map<std::uint32_t, std::uint8_t> known;
    for (std::size_t i = 0; i + 3 < picture.rgba.size(); i += 4) {
        const std::uint8_t* const rgba = &picture.rgba[i];
        std::uint32_t colour = 0;
        std::memcpy(&colour, rgba, sizeof colour);
        const auto [found, is_new] = known.try_emplace(colour);
        if (is_new) found->second = reduce(rgba);
        bitmap.pixels.push_back(found->second);
    }
    return bitmap;
}

}  // namespace

std::vector<std::uint32_t> laid_over(const ColourPicture& picture, std::uint32_t ground) {
    const LinearRgb behind = light_of(ground);
    std::vector<std::uint32_t> seen;
    for (std::size_t i = 0; i + 3 < picture.rgba.size(); i += 4) {
        seen.push_back(code_of(laid_over(&picture.rgba[i], behind)));
    }
    return seen;
}

Bitmap reduce_to_ink(const ColourPicture& picture) {
    constexpr LinearRgb white{1.0, 1.0, 1.0};
    return reduced(picture, false, [&](const std::uint8_t* rgba) -> std::uint8_t {
        return relative_luminance(laid_over(rgba, white)) < 0.5 ? 1 : 0;
    });
}

Bitmap reduce_to_tones(const ColourPicture& picture, const std::array<std::uint32_t, 4>& paints) {
    const LinearRgb ground = light_of(paints[0]);
    std::array<Lab, 4> labs{};
    std::transform(paints.begin(), paints.end(), labs.begin(), [](std::uint32_t paint) {
        return lab(light_of(paint));
    });
    return reduced(picture, true, [&](const std::uint8_t* rgba) {
        const Lab seen = lab(laid_over(rgba, ground));
        const auto nearest =
            std::min_element(labs.begin(), labs.end(), [&](const Lab& a, const Lab& b) {
                return ciede2000(seen, a) < ciede2000(seen, b);
            });
        return static_cast<std::uint8_t>(nearest - labs.begin());
    });
}

}  // namespace dialplate

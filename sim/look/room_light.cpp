#include "sim/look/room_light.hpp"

#include "sim/look/linear_light.hpp"

#include <array>

namespace dialplate {

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

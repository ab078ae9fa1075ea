#include "sim/desk/aids.hpp"

#include "sim/layout/colour.hpp"
#include "sim/look/colour_vision.hpp"
#include "sim/look/eye.hpp"
#include "sim/look/finger.hpp"
#include "sim/look/front_panel.hpp"
#include "sim/look/room_light.hpp"

#include <cmath>
#include <utility>

namespace dialplate {
namespace {

Rgb888 enlarged(const GlassPicture& glass, int scale) {
    const int width = glass.layout.glass_width(), height = glass.layout.glass_height();
    Rgb888 picture(width * scale, height * scale, 0);
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            picture.at(x, y) = expand_rgb565(
                glass.pixels[static_cast<std::size_t>(y / scale) * static_cast<std::size_t>(width) +
                             static_cast<std::size_t>(x / scale)]);
    return picture;
}

/// Half of the pixel's own colour, half of a grey that differs from it: seen on any ground.
std::uint32_t marked(std::uint32_t rgb) {
    const std::uint32_t green = (rgb >> 8) & 255u;
    const std::uint32_t over = green < 128 ? 0xFFFFFFu : 0x000000u;
    return ((rgb >> 1) & 0x7F7F7Fu) + ((over >> 1) & 0x7F7F7Fu);
}

/// Lines every 5 mm, from the upper left corner.
void draw_grid(Rgb888& picture, const Layout& layout, int scale) {
    constexpr double every_mm = 5.0;
    const double across = scale / layout.pitch_x().value, down = scale / layout.pitch_y().value;
    for (int line = 1; std::lround(line * every_mm * across) < picture.width; ++line)
        for (int y = 0; y < picture.height; ++y) {
            std::uint32_t& pixel =
                picture.at(static_cast<int>(std::lround(line * every_mm * across)), y);
            pixel = marked(pixel);
        }
    for (int line = 1; std::lround(line * every_mm * down) < picture.height; ++line)
        for (int x = 0; x < picture.width; ++x) {
            std::uint32_t& pixel =
                picture.at(x, static_cast<int>(std::lround(line * every_mm * down)));
            pixel = marked(pixel);
        }
}

}  // namespace

Rgb888 looked_at(const GlassPicture& glass, const Aids& aids, int scale, const RasterFace& labels) {
    const Layout& layout = glass.layout;
    Rgb888 picture = enlarged(glass, scale);
    // In the order in which light goes: the room at the glass, then the eye; marks come last, unblurred.
    if (aids.room) picture = in_room_light(picture, glass_light(layout, Lux{aids.light_lux}));
    if (aids.vision)
        picture = seen_with(all_visions[static_cast<std::size_t>(*aids.vision)], picture);
    if (aids.eye)
        picture = seen_by({.acuity = aids.acuity, .distance = Millimetres{aids.distance_mm}},
                          picture,
                          {Millimetres{layout.pitch_x().value / scale},
                           Millimetres{layout.pitch_y().value / scale}});
    if (aids.panel) picture = behind_panel({picture, scale}, layout, glass.page);
    if (aids.fingers) picture = with_finger({picture, scale}, layout, glass.page, labels);
    if (aids.grid) draw_grid(picture, layout, scale);
    return picture;
}

}  // namespace dialplate

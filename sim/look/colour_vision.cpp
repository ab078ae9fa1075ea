#include "sim/look/colour_vision.hpp"

#include "sim/look/linear_light.hpp"

#include <array>

namespace dialplate {

Rgb888 seen_with(Vision vision, const Rgb888& picture) {
    std::array<std::array<float, 3>, 3> m{};
    for (std::size_t i = 0; i < m.size(); ++i)
        for (std::size_t j = 0; j < m.size(); ++j)
            m[i][j] = static_cast<float>(matrix_of(vision)[i][j]);
    const LightTables& tables = light_tables();
    Rgb888 out = picture;
    // Neighbours mostly have one colour: the last answer is kept.
    std::uint32_t last = 0xFFFFFFFF, answer = 0;
    for (std::uint32_t& pixel : out.pixels) {
        if (pixel != last) {
            const Light light = tables.light(pixel);
            const auto row = [&](std::size_t i) {
                return m[i][0] * light.red + m[i][1] * light.green + m[i][2] * light.blue;
            };
            last = pixel;
            answer = tables.rgb888({row(0), row(1), row(2)});
        }
        pixel = answer;
    }
    return out;
}

}  // namespace dialplate

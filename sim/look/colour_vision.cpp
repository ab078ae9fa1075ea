#include "sim/look/colour_vision.hpp"

#include "sim/look/linear_light.hpp"

#include <array>

namespace dialplate {
namespace {

/// Rows: red, green, blue of the result; columns: of what is seen.
using Matrix = std::array<std::array<float, 3>, 3>;

// Machado, Oliveira, Fernandes, IEEE TVCG 15(6), 1291-1298, 2009: severity 1.0.
// clang-format off
constexpr Matrix protan{{{ 0.152286F,  1.052583F, -0.204868F},
                         { 0.114503F,  0.786281F,  0.099216F},
                         {-0.003882F, -0.048116F,  1.051998F}}};
constexpr Matrix deutan{{{ 0.367322F,  0.860646F, -0.227968F},
                         { 0.280085F,  0.672501F,  0.047413F},
                         {-0.011820F,  0.042940F,  0.968881F}}};
constexpr Matrix tritan{{{ 1.255528F, -0.076749F, -0.178779F},
                         {-0.078411F,  0.930809F,  0.147602F},
                         { 0.004733F,  0.691367F,  0.303900F}}};
// clang-format on

const Matrix& matrix_of(Vision vision) {
    switch (vision) {
        case Vision::protan:
            return protan;
        case Vision::deutan:
            return deutan;
        case Vision::tritan:
            break;
    }
    return tritan;
}

}  // namespace

Rgb888 seen_with(Vision vision, const Rgb888& picture) {
    const Matrix& m = matrix_of(vision);
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

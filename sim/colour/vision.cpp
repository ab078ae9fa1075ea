#include "sim/colour/vision.hpp"

#include <algorithm>

namespace dialplate {

namespace {

// clang-format off
constexpr VisionMatrix protan{{{ 0.152286,  1.052583, -0.204868},
                               { 0.114503,  0.786281,  0.099216},
                               {-0.003882, -0.048116,  1.051998}}};
constexpr VisionMatrix deutan{{{ 0.367322,  0.860646, -0.227968},
                               { 0.280085,  0.672501,  0.047413},
                               {-0.011820,  0.042940,  0.968881}}};
constexpr VisionMatrix tritan{{{ 1.255528, -0.076749, -0.178779},
                               {-0.078411,  0.930809,  0.147602},
                               { 0.004733,  0.691367,  0.303900}}};
// clang-format on

}  // namespace

const char* name_of(Vision vision) {
    switch (vision) {
        case Vision::protan:
            return "protan";
        case Vision::deutan:
            return "deutan";
        case Vision::tritan:
            break;
    }
    return "tritan";
}

const VisionMatrix& matrix_of(Vision vision) {
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

LinearRgb seen_with(Vision vision, const LinearRgb& light) {
    const VisionMatrix& m = matrix_of(vision);
    const auto row = [&](std::size_t i) {
        return std::clamp(
            m[i][0] * light.red + m[i][1] * light.green + m[i][2] * light.blue, 0.0, 1.0);
    };
    return {.red = row(0), .green = row(1), .blue = row(2)};
}

}  // namespace dialplate

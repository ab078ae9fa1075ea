// Between 8-bit sRGB codes and linear light, fast enough for a picture at every frame.
#pragma once

#include "sim/colour/linear_light.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

namespace dialplate {

/// One pixel in linear light: 0 nothing, 1 the white of the display.
struct Light {
    float red = 0, green = 0, blue = 0;
};

/// Both ways by table. Going back, light is cut into 16,384 steps; every code comes back as it went in, and
/// any other light at most one code beside its own.
class LightTables {
public:
    LightTables() : coded_(steps + 1) {
        for (std::size_t code = 0; code < linear_.size(); ++code)
            linear_[code] = static_cast<float>(linear_light(static_cast<std::uint8_t>(code)));
        for (std::size_t step = 0; step < coded_.size(); ++step)
            coded_[step] = coded_channel(static_cast<double>(step) / steps);
    }

    [[nodiscard]] Light light(std::uint32_t rgb888) const {
        return {linear_[rgb888 >> 16 & 0xFF], linear_[rgb888 >> 8 & 0xFF], linear_[rgb888 & 0xFF]};
    }
    [[nodiscard]] std::uint32_t rgb888(const Light& light) const {
        return code(light.red) << 16 | code(light.green) << 8 | code(light.blue);
    }

private:
    [[nodiscard]] std::uint32_t code(float linear) const {
        const float clamped = std::clamp(linear, 0.0F, 1.0F);
        return coded_[static_cast<std::size_t>(clamped * static_cast<float>(steps) + 0.5F)];
    }

    static constexpr int steps = 16384;
    std::array<float, 256> linear_{};
    std::vector<std::uint8_t> coded_;
};

/// The tables, made once.
[[nodiscard]] inline const LightTables& light_tables() {
    static const LightTables tables;
    return tables;
}

}  // namespace dialplate

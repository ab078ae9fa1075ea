#include "sim/look/eye.hpp"

#include "sim/check/visual_angle.hpp"
#include "sim/look/linear_light.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <vector>

namespace dialplate {
namespace {

/// Shares of a pixel's light that fall on itself [0] and on its neighbours to one side; together, both
/// sides counted, 1. Light leaves from the whole square of a pixel, not from its middle.
std::vector<float> shares(double spread_in_pixels) {
    constexpr double reach_in_spreads = 3.5;  // what lies outside is under 0.05 %
    const int reach = static_cast<int>(std::ceil(reach_in_spreads * spread_in_pixels + 0.5));
    const auto up_to = [&](double edge) {
        return 0.5 * std::erf(edge / (spread_in_pixels * std::numbers::sqrt2));
    };
    std::vector<float> share(static_cast<std::size_t>(reach) + 1);
    double all = 0.0;
    for (int k = 0; k <= reach; ++k) {
        const double part = up_to(k + 0.5) - up_to(k - 0.5);
        share[static_cast<std::size_t>(k)] = static_cast<float>(part);
        all += k == 0 ? part : 2.0 * part;
    }
    for (float& part : share)
        part = static_cast<float>(part / all);
    return share;
}

Light operator+(const Light& a, const Light& b) {
    return {a.red + b.red, a.green + b.green, a.blue + b.blue};
}
Light operator*(const Light& a, float k) {
    return {a.red * k, a.green * k, a.blue * k};
}

/// One line of light, spread along itself. `padded` has `reach` repeated pixels at either end.
void spread_line(const std::vector<Light>& padded,
                 const std::vector<float>& share,
                 std::vector<Light>& out) {
    const std::size_t reach = share.size() - 1;
    for (std::size_t x = 0; x < out.size(); ++x) {
        const std::size_t middle = x + reach;
        Light sum = padded[middle] * share[0];
        for (std::size_t k = 1; k <= reach; ++k)
            sum = sum + (padded[middle - k] + padded[middle + k]) * share[k];
        out[x] = sum;
    }
}

}  // namespace

Millimetres spread_of(const Eye& eye) {
    assert(eye.acuity > 0.0 && eye.distance.value > 0.0);
    const double full_width_a_sigma = 2.0 * std::sqrt(2.0 * std::numbers::ln2);  // 2.3548
    return height_for(ArcMinutes{1.0 / eye.acuity}, eye.distance) * (1.0 / full_width_a_sigma);
}

Rgb888 seen_by(const Eye& eye, const Rgb888& picture, const PixelSize& pixel) {
    assert(pixel.across.value > 0.0 && pixel.down.value > 0.0);
    if (picture.pixels.empty()) return picture;
    const LightTables& tables = light_tables();
    const auto width = static_cast<std::size_t>(picture.width);
    const auto height = static_cast<std::size_t>(picture.height);
    std::vector<Light> light(picture.pixels.size());

    // Along the rows, then down the columns: a round spread is the product of the two.
    const std::vector<float> along = shares(spread_of(eye) / pixel.across);
    const std::size_t side = along.size() - 1;
    std::vector<Light> padded(width + 2 * side), line(width);
    for (std::size_t y = 0; y < height; ++y) {
        for (std::size_t x = 0; x < width; ++x)
            padded[x + side] = tables.light(picture.pixels[y * width + x]);
        std::fill_n(padded.begin(), side, padded[side]);
        std::fill_n(
            padded.end() - static_cast<std::ptrdiff_t>(side), side, padded[width + side - 1]);
        spread_line(padded, along, line);
        std::copy(line.begin(), line.end(), light.begin() + static_cast<std::ptrdiff_t>(y * width));
    }

    const std::vector<float> down = shares(spread_of(eye) / pixel.down);
    const auto reach = static_cast<std::ptrdiff_t>(down.size()) - 1;
    const auto last = static_cast<std::ptrdiff_t>(height) - 1;
    Rgb888 out(picture.width, picture.height, 0);
    for (std::ptrdiff_t y = 0; y <= last; ++y) {
        // Row by row rather than column by column: memory is read in its order.
        std::fill(line.begin(), line.end(), Light{});
        for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
            const auto row = static_cast<std::size_t>(std::clamp(y + k, std::ptrdiff_t{0}, last));
            const float share = down[static_cast<std::size_t>(std::abs(k))];
            for (std::size_t x = 0; x < width; ++x)
                line[x] = line[x] + light[row * width + x] * share;
        }
        for (std::size_t x = 0; x < width; ++x)
            out.pixels[static_cast<std::size_t>(y) * width + x] = tables.rgb888(line[x]);
    }
    return out;
}

}  // namespace dialplate

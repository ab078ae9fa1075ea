#include "sim/look/eye.hpp"

#include "sim/look/linear_light.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace dialplate {
namespace {

/// Fine enough that a minute of arc at 400 mm, 0.1164 mm, is some dozen pixels.
constexpr PixelSize fine{.across = Millimetres{0.01}, .down = Millimetres{0.01}};

Rgb888 upright_bars(int width, int height, int half_period) {
    Rgb888 picture(width, height, 0x000000);
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x)
            if (x / half_period % 2 == 0) picture.at(x, y) = 0xFFFFFF;
    return picture;
}

double light_at(const Rgb888& picture, int x, int y) {
    return light_tables().light(picture.at(x, y)).green;
}

/// The model in so many words: every point of light a Gaussian, added up one by one in linear light.
double slow_twin(
    const Eye& eye, const Rgb888& picture, const PixelSize& pixel, int at_x, int at_y) {
    const double spread = spread_of(eye).value;
    constexpr int parts = 5;  // points across a pixel
    double sum = 0.0, all = 0.0;
    for (int y = -40; y < picture.height + 40; ++y) {
        for (int x = -40; x < picture.width + 40; ++x) {
            double weight = 0.0;
            for (int i = 0; i < parts * parts; ++i) {
                const double dx =
                    (x - at_x + (i % parts + 0.5) / parts - 0.5) * pixel.across.value / spread;
                const double dy =
                    (y - at_y + (static_cast<double>(i / parts) + 0.5) / parts - 0.5) *
                    pixel.down.value / spread;
                weight += std::exp(-0.5 * (dx * dx + dy * dy));
            }
            const int inside_x = std::clamp(x, 0, picture.width - 1);
            const int inside_y = std::clamp(y, 0, picture.height - 1);
            sum += weight * light_at(picture, inside_x, inside_y);
            all += weight;
        }
    }
    return sum / all;
}

}  // namespace

TEST(Eye, SpreadsLightByItsAngleOfResolution) {
    struct Row {
        double acuity, distance_mm, spread_mm;
        const char* source;
    };
    const Row rows[] = {
        {1.0, 400.0, 0.049412, "1' at 400 mm is 0.116355 mm; / 2.35482"},
        {0.5, 400.0, 0.098824, "2': twice that"},
        {1.0, 800.0, 0.098824, "twice as far: twice that"},
        {1.0, 500.0, 0.061765, "1' at 500 mm is 0.145444 mm (LEG-01); / 2.35482"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_NEAR(
            spread_of({.acuity = row.acuity, .distance = Millimetres{row.distance_mm}}).value,
            row.spread_mm,
            1e-6);
    }
}

TEST(Eye, KeepsTwoFifthsOfTheModulationOfBarsAtItsLimit) {
    // Bars of 1' at 400 mm, 0.116355 mm: 12 pixels of 0.0096963 mm. The first harmonic of bars is 4/pi of
    // their modulation and keeps exp(-2 (pi s / 2')^2) = exp(-0.88990) = 0.41069; the third harmonic keeps 0.0003.
    const PixelSize pixel{.across = Millimetres{0.116355 / 12}, .down = Millimetres{0.01}};
    const Rgb888 seen =
        seen_by({.acuity = 1.0, .distance = Millimetres{400.0}}, upright_bars(240, 3, 12), pixel);
    const double peak = light_at(seen, 5 + 120, 1), trough = light_at(seen, 5 + 132, 1);
    const double modulation = (peak - trough) / (peak + trough);
    // At half a pixel from the crest: cos(pi/24) = 0.99144. Tolerance: 8-bit codes.
    EXPECT_NEAR(modulation, 4.0 / std::numbers::pi * 0.41069 * 0.99144, 0.006);
}

TEST(Eye, AgreesWithPointsOfLightAddedOneByOne) {
    Rgb888 picture(24, 20, 0x203040);
    for (int i = 0; i < 14; ++i)
        picture.at(3 + i, 4 + i % 7) = i % 3 == 0 ? 0xFFFFFF : 0x00C040;
    const Eye eye{.acuity = 0.5, .distance = Millimetres{500.0}};
    const PixelSize pixel{.across = Millimetres{0.10}, .down = Millimetres{0.14}};
    const Rgb888 seen = seen_by(eye, picture, pixel);
    for (const auto& [x, y] : {std::pair{3, 4}, {9, 7}, {0, 0}, {23, 19}, {12, 5}, {4, 10}}) {
        SCOPED_TRACE(std::to_string(x) + ", " + std::to_string(y));
        // Tolerance: one 8-bit code of the brightest result, and points instead of squares of light.
        EXPECT_NEAR(light_at(seen, x, y), slow_twin(eye, picture, pixel, x, y), 0.006);
    }
}

TEST(Eye, LeavesAPlainGlassAsItIs) {
    const Rgb888 plain(17, 9, 0x6A85C3);
    EXPECT_EQ(seen_by({.acuity = 0.3, .distance = Millimetres{700.0}}, plain, fine), plain);
}

TEST(Eye, LeavesCoarsePixelsAsTheyAreWhenItIsSharp) {
    // Pixels of 5 mm at 400 mm: 43'. What is spread over an edge is a hundredth of a pixel.
    const PixelSize coarse{.across = Millimetres{5.0}, .down = Millimetres{5.0}};
    const Rgb888 bars = upright_bars(8, 4, 2);
    EXPECT_EQ(seen_by({.acuity = 1.0, .distance = Millimetres{400.0}}, bars, coarse), bars);
}

TEST(Eye, TakesAPictureWithoutPixels) {
    EXPECT_TRUE(seen_by({.acuity = 1.0, .distance = Millimetres{400.0}}, {}, fine).pixels.empty());
}

}  // namespace dialplate

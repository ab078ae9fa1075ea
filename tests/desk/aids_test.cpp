#include "sim/desk/aids.hpp"

#include "sim/layout/reader.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

Layout coast_listener() {
    Reading reading = load_layout(std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json");
    return reading.layout ? std::move(*reading.layout) : Layout{};
}

/// White on the left, black on the right.
std::vector<std::uint16_t> halves(const Layout& layout) {
    std::vector<std::uint16_t> pixels;
    for (int y = 0; y < layout.glass_height(); ++y)
        for (int x = 0; x < layout.glass_width(); ++x)
            pixels.push_back(x < layout.glass_width() / 2 ? 0xFFFF : 0x0000);
    return pixels;
}

TEST(Aids, WithoutAnyThePixelsAreSquaresOfTheirOwnColour) {
    const Layout layout = coast_listener();
    const std::vector<std::uint16_t> pixels = halves(layout);
    const Rgb888 seen = looked_at({layout, 0, pixels}, {}, 3, {});
    ASSERT_EQ(seen.width, 960);
    ASSERT_EQ(seen.height, 720);
    EXPECT_EQ(seen.at(479, 0), 0xFFFFFFu);
    EXPECT_EQ(seen.at(480, 719), 0x000000u);
}

TEST(Aids, ARoomLiftsBlackAndAnEyeSpreadsAnEdge) {
    const Layout layout = coast_listener();
    const std::vector<std::uint16_t> pixels = halves(layout);
    Aids room;
    room.room = true;
    room.light_lux = 5000;
    EXPECT_GT(looked_at({layout, 0, pixels}, room, 2, {}).at(639, 10), 0u);
    Aids eye;
    eye.eye = true;
    eye.distance_mm = 1000;
    const Rgb888 seen = looked_at({layout, 0, pixels}, eye, 2, {});
    EXPECT_LT(seen.at(319, 10) & 255u, 255u);
    EXPECT_GT(seen.at(320, 10) & 255u, 0u);
    EXPECT_EQ(seen.at(0, 10) & 255u, 255u) << "far from the edge nothing changes";
}

TEST(Aids, TheGridHasALineEveryFiveMillimetres) {
    const Layout layout = coast_listener();
    const std::vector<std::uint16_t> pixels(
        static_cast<std::size_t>(layout.glass_width() * layout.glass_height()), 0);
    Aids grid;
    grid.grid = true;
    const Rgb888 seen = looked_at({layout, 0, pixels}, grid, 2, {});
    // 57.6 mm are 640 screen pixels: 5 mm are 55.6, 50 mm are 555.6.
    EXPECT_NE(seen.at(56, 3), 0u);
    EXPECT_NE(seen.at(556, 3), 0u);
    int lines = 0;
    for (int x = 0; x < seen.width; ++x)
        lines += seen.at(x, 3) != 0 ? 1 : 0;
    EXPECT_EQ(lines, 11);
}

}  // namespace
}  // namespace dialplate

#include "sim/look/colour_vision.hpp"

#include <gtest/gtest.h>

#include <cstdlib>

namespace dialplate {
namespace {

std::uint32_t seen_colour(Vision vision, std::uint32_t rgb) {
    return seen_with(vision, Rgb888(1, 1, rgb)).at(0, 0);
}

}  // namespace

TEST(ColourVision, ShowsThePublishedColours) {
    struct Row {
        Vision vision;
        std::uint32_t rgb;
        int red, green, blue;
        const char* source;
    };
    const Row rows[] = {
        {Vision::protan, 0xFF0000, 109, 95, 0, "CVD-02"},
        {Vision::deutan, 0xFF0000, 163, 144, 0, "CVD-02"},
        {Vision::tritan, 0xFF0000, 255, 0, 15, "CVD-02"},
        {Vision::protan, 0x00FF00, 255, 229, 0, "CVD-03"},
        {Vision::deutan, 0x00FF00, 239, 214, 58, "CVD-03"},
        {Vision::tritan, 0x00FF00, 0, 247, 217, "CVD-03"},
        {Vision::protan, 0x0000FF, 0, 89, 255, "CVD-04"},
        {Vision::deutan, 0x0000FF, 0, 61, 251, "CVD-04"},
        {Vision::tritan, 0x0000FF, 0, 107, 150, "CVD-04"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const std::uint32_t seen = seen_colour(row.vision, row.rgb);
        // Tolerance of the table: 1 code.
        EXPECT_NEAR(static_cast<int>(seen >> 16), row.red, 1);
        EXPECT_NEAR(static_cast<int>(seen >> 8 & 0xFF), row.green, 1);
        EXPECT_NEAR(static_cast<int>(seen & 0xFF), row.blue, 1);
    }
}

TEST(ColourVision, LeavesGreysAlone) {
    for (const Vision vision : {Vision::protan, Vision::deutan, Vision::tritan})
        for (std::uint32_t grey = 0; grey < 256; ++grey)
            EXPECT_EQ(seen_colour(vision, grey * 0x010101u), grey * 0x010101u) << "CVD-01";
}

TEST(ColourVision, ChangesEachPixelByItsOwnColour) {
    Rgb888 picture(4, 1, 0xFF0000);
    picture.at(1, 0) = 0x0000FF;
    picture.at(3, 0) = 0x808080;
    const Rgb888 seen = seen_with(Vision::deutan, picture);
    for (int x = 0; x < 4; ++x)
        EXPECT_EQ(seen.at(x, 0), seen_colour(Vision::deutan, picture.at(x, 0)));
}

}  // namespace dialplate

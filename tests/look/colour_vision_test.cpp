#include "sim/look/colour_vision.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

std::uint32_t seen_colour(Vision vision, std::uint32_t rgb) {
    return seen_with(vision, Rgb888(1, 1, rgb)).at(0, 0);
}

}  // namespace

// The colours that are published stand in tests/colour/vision_test.cpp; this is the way by tables, for pictures.
TEST(ColourVision, ShowsEachColourAsTheExactComputationDoes) {
    for (const Vision vision : {Vision::protan, Vision::deutan, Vision::tritan}) {
        for (std::uint32_t n = 0; n < 512; ++n) {
            const std::uint32_t rgb = (n & 7) * 36 << 16 | (n >> 3 & 7) * 36 << 8 | (n >> 6) * 36;
            const std::uint32_t seen = seen_colour(vision, rgb);
            const std::uint32_t exact = code_of(seen_with(vision, light_of(rgb)));
            SCOPED_TRACE(rgb);
            for (const int shift : {0, 8, 16}) {
                // Tolerance: that of the tables, one code.
                EXPECT_NEAR(static_cast<int>(seen >> shift & 0xFF),
                            static_cast<int>(exact >> shift & 0xFF),
                            1);
            }
        }
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

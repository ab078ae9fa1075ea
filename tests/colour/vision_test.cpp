#include "sim/colour/vision.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {

TEST(Vision, LeavesWhiteAndGreyAsTheyAre) {
    // CVD-01 (derived): each row sums to 1 within 2e-6.
    for (const Vision vision : all_visions) {
        SCOPED_TRACE(name_of(vision));
        for (const auto& row : matrix_of(vision))
            EXPECT_NEAR(row[0] + row[1] + row[2], 1.0, 2e-6);
        EXPECT_EQ(code_of(seen_with(vision, light_of(0x808080))), 0x808080u);
    }
}

TEST(Vision, ShowsTheColoursThatArePublished) {
    struct Row {
        Vision vision;
        std::uint32_t shown;
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
        SCOPED_TRACE(std::string(row.source) + " " + name_of(row.vision));
        const std::uint32_t seen = code_of(seen_with(row.vision, light_of(row.shown)));
        // Tolerance of the table: one code.
        EXPECT_NEAR(static_cast<int>(seen >> 16), row.red, 1);
        EXPECT_NEAR(static_cast<int>(seen >> 8 & 0xFF), row.green, 1);
        EXPECT_NEAR(static_cast<int>(seen & 0xFF), row.blue, 1);
    }
}

TEST(Vision, WorksOnLightAndNotOnCodes) {
    // CVD-05: the matrix on coded values would make protan red (39, 29, 0).
    EXPECT_GT(code_of(seen_with(Vision::protan, light_of(0xFF0000))) >> 16, 100u);
}

TEST(Vision, DimsRedForAProtan) {
    // CVD-06 (derived): 0.2126 falls to 0.114269, and red on black from 5.25:1 to 3.285:1.
    const double red = relative_luminance(seen_with(Vision::protan, light_of(0xFF0000)));
    EXPECT_NEAR(red, 0.114269, 1e-4);
    EXPECT_NEAR((red + 0.05) / 0.05, 3.285, 0.001);
}

}  // namespace dialplate

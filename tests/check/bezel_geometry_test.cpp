#include "sim/check/bezel_geometry.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

Opening opening_of(double height_mm, double depth_mm) {
    return {.left = Millimetres{0.0},
            .top = Millimetres{0.0},
            .width = Millimetres{50.0},
            .height = Millimetres{height_mm},
            .depth = Millimetres{depth_mm},
            .overlap = Millimetres{3.0}};
}

}  // namespace

TEST(BezelGeometry, HidesWhatTheRayOverTheEdgeLeavesOut) {
    struct Row {
        double distance_mm, tilt_deg, height_mm, depth_mm;
        double top_mm, bottom_mm;
        const char* by_hand;
    };
    const Row rows[] = {
        {500, 30, 40, 3, 1.604604, 0, "eye 250 up, 433.0127 before: 3 x 230 / 430.0127"},
        {500, -30, 40, 3, 0, 1.604604, "the same from below"},
        {400, 5, 42.4, 2, 0.068919, 0, "eye 34.8623 up, 398.4779 before: 2 x 13.6623 / 396.4779"},
        {500, 2, 40, 3, 0, 0, "eye 17.45 up: not above the upper edge, it sees behind it"},
        {500, 0, 40, 3, 0, 0, "straight on"},
        {500, 30, 40, 0, 0, 0, "no depth"},
        {1e7,
         30,
         40,
         3,
         1.732044,
         0,
         "far away: 3 x tan 30 degrees, 1.732051, less 3 x 20 / 8.66e6"},
        {50,
         89,
         40,
         2,
         40,
         0,
         "eye 0.87 before the glass, behind the panel's front: nothing is seen"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.by_hand);
        const Shade shade = shade_of(opening_of(row.height_mm, row.depth_mm),
                                     {.distance = Millimetres{row.distance_mm},
                                      .tilt = Degrees{row.tilt_deg},
                                      .light = Lux{300.0}});
        EXPECT_NEAR(shade.top.value, row.top_mm, 2e-6);
        EXPECT_NEAR(shade.bottom.value, row.bottom_mm, 2e-6);
    }
}

TEST(BezelGeometry, SeesOnlyPixelsThatAreWhole) {
    Layout layout;
    layout.display.width = 100;
    layout.display.height = 100;
    layout.display.active_width = Millimetres{20.0};  // 0.2 mm a pixel
    layout.display.active_height = Millimetres{20.0};
    Opening opening = opening_of(10.0, 2.0);
    opening.left = Millimetres{1.0};
    opening.top = Millimetres{1.1};
    opening.width = Millimetres{10.0};
    // 1.0 mm is the edge of column 5; 1.1 mm lies in row 5, so that row 6 is the first one whole; 11.0 mm
    // ends column 54, and 11.1 mm lies in row 55.
    const SeenPixels seen = seen_pixels(layout, opening);
    EXPECT_EQ(seen.left, 5);
    EXPECT_EQ(seen.right, 55);
    EXPECT_EQ(seen.top, 6);
    EXPECT_EQ(seen.bottom, 55);
    const SeenPixels shaded =
        seen_pixels(layout, opening, {.top = Millimetres{0.11}, .bottom = Millimetres{0.0}});
    EXPECT_EQ(shaded.top, 7) << "1.21 mm lies in row 6";
    EXPECT_EQ(shaded.bottom, 55);
}

}  // namespace dialplate

#include "sim/check/visual_angle.hpp"

#include <gtest/gtest.h>

#include <type_traits>

namespace dialplate {

TEST(VisualAngle, GivesThePublishedHeightForAnAngle) {
    struct Row {
        double distance_mm, arc_minutes, height_mm;
        const char* source;
    };
    const Row rows[] = {
        {500, 16, 2.3271, "LEG-01"},
        {500, 20, 2.9089, "LEG-01"},
        {500, 22, 3.1998, "LEG-01"},
        {400, 16, 1.8617, "LEG-01"},
        {700, 20, 4.0724, "LEG-01"},
        {500, 16, 2.32704, "LEG-02: NUREG-0700 rev. 2, 1.3.1-4, small-angle form"},
        {6096, 5, 8.87, "Snellen letter, 20/20 line, read at 20 ft"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const Millimetres height =
            height_for(ArcMinutes{row.arc_minutes}, Millimetres{row.distance_mm});
        // Tolerance: the published heights are rounded to four decimals, the letter to two.
        EXPECT_NEAR(height.value, row.height_mm, row.distance_mm > 1000 ? 0.005 : 0.0005);
    }
}

TEST(VisualAngle, GivesThePublishedAngleForAHeight) {
    struct Row {
        double height_mm, distance_mm, arc_minutes, tolerance;
        const char* source;
    };
    const Row rows[] = {
        {2.52, 500, 17.326, 0.001, "LEG-03: 14 px"},
        {0.180, 400, 1.5470, 0.0002, "LEG-04: one pixel"},
        {0.180, 500, 1.2376, 0.0002, "LEG-04"},
        {0.180, 600, 1.0313, 0.0002, "LEG-04"},
        {0.180, 700, 0.8840, 0.0002, "LEG-04"},
        {0.153, 500, 1.0520, 0.0002, "LEG-04"},
        {0.0975, 500, 0.6704, 0.0002, "LEG-04"},
        {2.5, 500, 17.1887, 0.001, "LEG-09: 1/200 of the distance"},
        {7 * 0.180, 500, 8.663, 0.001, "LEG-11, LEG-21: capital of a 5x7 face"},
        {14 * 0.180, 500, 17.326, 0.001, "LEG-21: enlarged twice"},
        {21 * 0.180, 500, 25.989, 0.001, "LEG-21: enlarged three times"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const Sighting sighting{.height = Millimetres{row.height_mm},
                                .distance = Millimetres{row.distance_mm}};
        EXPECT_NEAR(visual_angle(sighting).value, row.arc_minutes, row.tolerance);
    }
}

TEST(VisualAngle, RoundsUpToThePublishedPixels) {
    struct Row {
        double distance_mm, arc_minutes, pitch_mm;
        int pixels;
        const char* source;
    };
    const Row rows[] = {
        {400, 16, 0.180, 11, "LEG-10"},
        {400, 20, 0.180, 13, "LEG-10"},
        {400, 22, 0.180, 15, "LEG-10"},
        {500, 16, 0.180, 13, "LEG-10"},
        {500, 20, 0.180, 17, "LEG-10"},
        {500, 22, 0.180, 18, "LEG-10"},
        {600, 16, 0.180, 16, "LEG-10"},
        {600, 20, 0.180, 20, "LEG-10"},
        {600, 22, 0.180, 22, "LEG-10"},
        {700, 16, 0.180, 19, "LEG-10"},
        {700, 20, 0.180, 23, "LEG-10"},
        {700, 22, 0.180, 25, "LEG-10"},
        {500, 16, 0.219, 11, "panels, 1.8 in: 10.63"},
        {500, 20, 0.219, 14, "panels, 1.8 in: 13.28"},
        {500, 16, 0.153, 16, "panels, 2.4 and 3.5 in: 15.21"},
        {500, 20, 0.153, 20, "panels, 2.4 and 3.5 in: 19.01"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const AngleOnPixels wanted{.angle = ArcMinutes{row.arc_minutes},
                                   .distance = Millimetres{row.distance_mm},
                                   .pitch = Millimetres{row.pitch_mm}};
        EXPECT_EQ(pixels_for(wanted).value, row.pixels);
    }
}

TEST(VisualAngle, ForeshortensByTheCosine) {
    EXPECT_NEAR(foreshortened(Millimetres{2.0}, Degrees{60.0}).value, 1.0, 1e-12);
    EXPECT_DOUBLE_EQ(foreshortened(Millimetres{2.0}, Degrees{0.0}).value, 2.0);
}

TEST(VisualAngle, TakesNoPlainNumberForALength) {
    static_assert(!std::is_convertible_v<double, Millimetres>, "a length always names its unit");
    static_assert(!std::is_convertible_v<Millimetres, ArcMinutes>, "a length is no angle");
}

}  // namespace dialplate

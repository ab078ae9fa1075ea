#include "sim/check/touch_geometry.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

/// A box given by its corner and size in CSS pixels.
Target css(double x, double y, double width, double height) {
    return {.left = css_pixel * x,
            .top = css_pixel * y,
            .right = css_pixel * (x + width),
            .bottom = css_pixel * (y + height)};
}

Target millimetres(double width, double height) {
    return {.left = Millimetres{0},
            .top = Millimetres{0},
            .right = Millimetres{width},
            .bottom = Millimetres{height}};
}

}  // namespace

TEST(TouchGeometry, TakesTheCssPixelForAFixedLength) {
    EXPECT_NEAR(least_target.value, 6.350, 1e-9) << "TCH-01: 24 px";
    EXPECT_NEAR(css_pixel.value * 44, 11.6417, 1e-4) << "TCH-01, TCH-06: 44 px";
}

TEST(TouchGeometry, CallsABoxUndersizedThatIsNarrowInOneDirection) {
    EXPECT_FALSE(undersized(css(0, 0, 24, 24))) << "TCH-02";
    EXPECT_TRUE(undersized(css(0, 0, 20, 100))) << "TCH-A1: the trap";
    EXPECT_TRUE(undersized(css(0, 0, 100, 20))) << "TCH-A1: the trap, lying";
    // One pixel of a 2.8 inch display: 36 px do, 35 px do not (35.28 is the minimum).
    EXPECT_FALSE(undersized(millimetres(36 * 0.180, 36 * 0.180))) << "TCH-02";
    EXPECT_TRUE(undersized(millimetres(35 * 0.180, 36 * 0.180))) << "TCH-02";
}

TEST(TouchGeometry, AppliesTheCircleRuleAsPublished) {
    struct Row {
        Target small, other;
        bool enough;
        const char* source;
    };
    const Row rows[] = {
        {css(0, 0, 20, 20), css(24, 0, 20, 20), true, "TCH-A1: gap 4, centres 24 apart"},
        {css(0, 0, 20, 20), css(23, 0, 20, 20), false, "TCH-A1: gap 3, centres 23 apart"},
        {css(0, 0, 16, 16), css(20, -12, 40, 40), true, "TCH-A1: centre 12 from a 40x40 edge"},
        {css(0, 0, 16, 16), css(19, -12, 40, 40), false, "TCH-A1: centre 11 from a 40x40 edge"},
        {css(0, 0, 20, 100), css(22, 0, 20, 100), false, "TCH-A1: two tall ones, centres 22 apart"},
        {css(0, 0, 20, 100), css(24, 0, 20, 100), true, "TCH-A1: two tall ones, centres 24 apart"},
        // A tall undersized key: the circle about its middle is far from a target at its end.
        {css(0, 0, 20, 100), css(-10, 101, 40, 40), true, "TCH-03: the circle is at the middle"},
        // Diagonal: 3-4-5, the corner exactly 15 away; and exactly 10.
        {css(0, 0, 2, 2), css(10, 13, 40, 40), true, "TCH-A1: corner at (9, 12), 15 away"},
        {css(0, 0, 2, 2), css(7, 9, 40, 40), false, "TCH-A1: corner at (6, 8), 10 away"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(circle_room(row.small, row.other).enough(), row.enough);
    }
}

TEST(TouchGeometry, MeasuresTheGapBetweenEdges) {
    const Target a = css(0, 0, 10, 10);
    EXPECT_NEAR(gap_between(a, css(13, 0, 10, 10)).value, 3 * css_pixel.value, 1e-12);
    EXPECT_NEAR(gap_between(a, css(13, 14, 10, 10)).value, 5 * css_pixel.value, 1e-12);
    EXPECT_EQ(gap_between(a, css(5, 5, 10, 10)).value, 0.0);
    EXPECT_EQ(gap_between(css(13, 0, 10, 10), a), gap_between(a, css(13, 0, 10, 10)));
}

TEST(TouchGeometry, GivesThePublishedHitProbabilities) {
    struct Row {
        double width, height, sigma_x, sigma_y, aim_x, aim_y, probability;
        const char* source;
    };
    const Row rows[] = {
        {9, 9, 1.5, 1.5, 0, 0, 0.994608, "TCH-24"},
        {9.2, 9.2, 1.5, 1.5, 0, 0, 0.995675, "TCH-24"},
        {7.2, 7.2, 1.5, 1.5, 0, 0, 0.967479, "TCH-24"},
        {6.35, 6.35, 1.5, 1.5, 0, 0, 0.932599, "TCH-24"},
        {4.8, 4.8, 1.5, 1.5, 0, 0, 0.792815, "TCH-24"},
        {3, 3, 1.5, 1.5, 0, 0, 0.466065, "TCH-24"},
        {12.6, 8.1, 1.3, 1.5, 0, 0, 0.993065, "TCH-24"},
        {9, 9, 1.5, 1.5, 1, 0, 0.987389, "TCH-25"},
        {9, 9, 1.5, 1.5, 2, 2, 0.906689, "TCH-25"},
        {6.7094, 6.7094, 1.5, 1.5, 0, 0, 0.95, "TCH-26"},
        {7.7223, 7.7223, 1.5, 1.5, 0, 0, 0.98, "TCH-26"},
        {8.4187, 8.4187, 1.5, 1.5, 0, 0, 0.99, "TCH-26"},
        {10.4421, 10.4421, 1.5, 1.5, 0, 0, 0.999, "TCH-26"},
        {3, 1000, 1.5, 1.5, 0, 0, 0.682689, "TCH-27: W = 2 sigma"},
        {9, 1000, 1.5, 1.5, 0, 0, 0.997300, "TCH-27: W = 6 sigma"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const FingerSpread finger{.across = Millimetres{row.sigma_x},
                                  .down = Millimetres{row.sigma_y}};
        const Aim aim{.across = Millimetres{row.aim_x}, .down = Millimetres{row.aim_y}};
        EXPECT_NEAR(hit_probability(millimetres(row.width, row.height), finger, aim),
                    row.probability,
                    1e-5);
    }
}

TEST(TouchGeometry, TakesTheAdoptedSpreadForAFingerOfItsOwn) {
    EXPECT_NEAR(hit_probability(millimetres(9.2, 9.2)), 0.995675, 1e-5) << "TCH-22, TCH-24";
}

}  // namespace dialplate

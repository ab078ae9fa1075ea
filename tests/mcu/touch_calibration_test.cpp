#include "ui/touch_calibration.hpp"

#include "ui/touch_fit.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <random>
#include <vector>

namespace dialplate {
namespace {

// Touches and targets of the worked example in TI Analog Applications Journal, Fang and Chang,
// "Calibration in touch-screen systems", SLYT277 (standards RES-05, RES-06).
constexpr TouchSample three[3] = {
    {{678, 2169}, {64, 384}}, {{2807, 1327}, {192, 192}}, {{2629, 3367}, {192, 576}}};
constexpr TouchSample five[5] = {{{1698, 2258}, {128, 384}},
                                 {{767, 1149}, {64, 192}},
                                 {{2807, 1327}, {192, 192}},
                                 {{2629, 3367}, {192, 576}},
                                 {{588, 3189}, {64, 576}}};

double real(std::int32_t fixed) {
    return fixed / 65536.0;
}

double real_map(const TouchAxis& axis, const RawTouch& raw) {
    return real(axis.of_x) * raw.x + real(axis.of_y) * raw.y + real(axis.offset);
}

TEST(TouchCalibration, SolvesThePublishedExampleOfThreePoints) {
    TouchCalibration found{};
    ASSERT_TRUE(calibrate_touch(three, found));
    struct Row {
        double got, expected;
        const char* source;
    };
    const Row slopes[] = {
        {real(found.x.of_x), 0.0622710, "RES-05 ax"},
        {real(found.x.of_y), 0.00543345, "RES-05 bx"},
        {real(found.y.of_x), -0.0163004, "RES-05 ay"},
        {real(found.y.of_y), 0.1868130, "RES-05 by"},
    };
    for (const Row& row : slopes) {
        SCOPED_TRACE(row.source);
        EXPECT_NEAR(row.got, row.expected, 0.5 / 65536 + 1e-7);  // Half a unit of the fixed point.
    }
    // The offset takes up what the rounded slopes lose at the first point: (678 + 2169) half units.
    EXPECT_NEAR(real(found.x.offset), 9.995106, (678 + 2169) * 0.5 / 65536 + 1e-5) << "RES-05 dx";
    EXPECT_NEAR(real(found.y.offset), -10.145778, (678 + 2169) * 0.5 / 65536 + 1e-5) << "RES-05 dy";
}

TEST(TouchCalibration, MapsItsOwnThreePointsExactlyAndTheOtherTwoAsPublished) {
    TouchCalibration found{};
    ASSERT_TRUE(calibrate_touch(three, found));
    for (const TouchSample& sample : three) {
        EXPECT_EQ(map_touch(found, sample.raw).x, sample.glass.x);
        EXPECT_EQ(map_touch(found, sample.raw).y, sample.glass.y);
    }
    // RES-07: (588, 3189) gives (63.93773, 576.01630) in real numbers.
    const RawTouch fifth{588, 3189};
    EXPECT_NEAR(real_map(found.x, fifth), 63.93773, 0.03);
    EXPECT_NEAR(real_map(found.y, fifth), 576.01630, 0.03);
    EXPECT_EQ(map_touch(found, fifth).x, 64);
    EXPECT_EQ(map_touch(found, fifth).y, 576);
}

TEST(TouchCalibration, FitsFivePointsByLeastSquaresAsPublished) {
    FittedTouch<double> fitted{};
    ASSERT_TRUE(fit_touch(five, 5, fitted));
    struct Row {
        double got, expected;
        const char* source;
    };
    const Row rows[] = {
        {fitted.x.of_x, 0.0622545, "RES-06 ax"},
        {fitted.x.of_y, 0.00544727, "RES-06 bx"},
        {fitted.x.offset, 10.004312, "RES-06 dx"},
        {fitted.y.of_x, -0.0162960, "RES-06 ay"},
        {fitted.y.of_y, 0.1868094, "RES-06 by"},
        {fitted.y.offset, -10.148188, "RES-06 dy"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_NEAR(row.got, row.expected, std::abs(row.expected) * 1e-4);
    }
    double squares = 0;
    for (const TouchSample& s : five) {
        const double dx =
            fitted.x.of_x * s.raw.x + fitted.x.of_y * s.raw.y + fitted.x.offset - s.glass.x;
        const double dy =
            fitted.y.of_x * s.raw.x + fitted.y.of_y * s.raw.y + fitted.y.offset - s.glass.y;
        squares += dx * dx + dy * dy;
    }
    EXPECT_NEAR(std::sqrt(squares / 5), 0.015763, 0.015763 * 1e-3) << "RES-06, over five points";
}

TEST(TouchCalibration, FitsInSinglePrecisionWithinATenthOfAPixel) {
    FittedTouch<double> exact{};
    FittedTouch<float> single{};
    ASSERT_TRUE(fit_touch(five, 5, exact));
    ASSERT_TRUE(fit_touch(five, 5, single));
    for (int x = 0; x <= 4095; x += 315) {
        for (int y = 0; y <= 4095; y += 315) {
            const double of_exact = exact.x.of_x * x + exact.x.of_y * y + exact.x.offset;
            const double of_single =
                double{single.x.of_x} * x + double{single.x.of_y} * y + double{single.x.offset};
            EXPECT_NEAR(of_exact, of_single, 0.1);
        }
    }
}

TEST(TouchCalibration, MapsInIntegersWithin57HundredthsOfThePixelOverTheWholeSheet) {
    // Maps of every kind that turns up: plain, mirrored, axes exchanged, askew, 12 and 10 bits.
    const std::array<FittedTouch<double>, 5> maps = {{
        {{0.08888, 0.00031, -20.5}, {-0.0011, 0.0671, -17.25}},
        {{-0.08888, 0.00031, 344.5}, {-0.0011, -0.0671, 255.75}},
        {{0.0007, -0.1333, 500.1}, {0.0899, 0.0021, -24.8}},
        {{0.4692, 0.0049, -0.4}, {-0.0063, 0.3128, 3.2}},
        {{0.0622545, 0.00544727, 10.004312}, {-0.0162960, 0.1868094, -10.148188}},
    }};
    double worst = 0;
    for (const FittedTouch<double>& map : maps) {
        TouchCalibration fixed{};
        ASSERT_TRUE(round_touch(map, fixed));
        for (std::uint16_t x = 0; x <= 4095; x = static_cast<std::uint16_t>(x + 13)) {
            for (std::uint16_t y = 0; y <= 4095; y = static_cast<std::uint16_t>(y + 7)) {
                const GlassPoint got = map_touch(fixed, {x, y});
                worst = std::max(
                    worst, std::abs(got.x - (map.x.of_x * x + map.x.of_y * y + map.x.offset)));
                worst = std::max(
                    worst, std::abs(got.y - (map.y.of_x * x + map.y.of_y * y + map.y.offset)));
            }
        }
    }
    EXPECT_LE(worst, 0.57);
    EXPECT_GE(worst, 0.45) << "rounding to whole pixels alone must show";
}

TEST(TouchCalibration, SolvesThreePointsInIntegersAsTheRealFormulaDoes) {
    // Random sheets; the twin is standards RES-04 in double.
    std::mt19937 random(20070704);
    std::uniform_int_distribution<int> count(0, 4095), pixel(0, 479);
    int solved = 0;
    for (int round = 0; round < 20000; ++round) {
        TouchSample s[3];
        for (TouchSample& sample : s) {
            sample = {{static_cast<std::uint16_t>(count(random)),
                       static_cast<std::uint16_t>(count(random))},
                      {static_cast<std::int16_t>(pixel(random)),
                       static_cast<std::int16_t>(pixel(random))}};
        }
        const double x13 = s[0].raw.x - s[2].raw.x, y13 = s[0].raw.y - s[2].raw.y;
        const double x23 = s[1].raw.x - s[2].raw.x, y23 = s[1].raw.y - s[2].raw.y;
        const double k = x13 * y23 - x23 * y13;
        TouchCalibration found{};
        const bool answer = calibrate_touch(s, found);
        if (std::abs(k) < least_touch_triangle) {
            EXPECT_FALSE(answer) << k;
            continue;
        }
        const double u13 = s[0].glass.x - s[2].glass.x, u23 = s[1].glass.x - s[2].glass.x;
        const double v13 = s[0].glass.y - s[2].glass.y, v23 = s[1].glass.y - s[2].glass.y;
        const double ax = (u13 * y23 - u23 * y13) / k, bx = (x13 * u23 - x23 * u13) / k;
        const double ay = (v13 * y23 - v23 * y13) / k, by = (x13 * v23 - x23 * v13) / k;
        if (!answer) {
            EXPECT_GE(std::max(std::abs(ax) + std::abs(bx), std::abs(ay) + std::abs(by)), 1.9999);
            continue;
        }
        ++solved;
        EXPECT_NEAR(real(found.x.of_x), ax, 0.5001 / 65536);
        EXPECT_NEAR(real(found.x.of_y), bx, 0.5001 / 65536);
        EXPECT_NEAR(real(found.y.of_x), ay, 0.5001 / 65536);
        EXPECT_NEAR(real(found.y.of_y), by, 0.5001 / 65536);
        for (const TouchSample& sample : s) {
            EXPECT_EQ(map_touch(found, sample.raw).x, sample.glass.x);
            EXPECT_EQ(map_touch(found, sample.raw).y, sample.glass.y);
        }
    }
    EXPECT_GT(solved, 15000) << "most random triangles are wide enough";
}

TEST(TouchCalibration, RefusesPointsInALine) {
    const TouchSample line[3] = {
        {{400, 400}, {32, 24}}, {{2000, 2000}, {160, 120}}, {{3600, 3601}, {288, 216}}};
    TouchCalibration found{{1, 2, 3}, {4, 5, 6}};
    EXPECT_FALSE(calibrate_touch(line, found));
    EXPECT_EQ(found.y.offset, 6) << "untouched";
    FittedTouch<double> fitted{};
    EXPECT_FALSE(fit_touch(line, 3, fitted));
    const TouchSample same[3] = {
        {{400, 400}, {32, 24}}, {{400, 400}, {160, 120}}, {{400, 400}, {288, 216}}};
    EXPECT_FALSE(calibrate_touch(same, found));
    EXPECT_FALSE(fit_touch(same, 3, fitted));
}

TEST(TouchCalibration, FitOfThreePointsIsTheThreePointSolution) {
    FittedTouch<double> fitted{};
    ASSERT_TRUE(fit_touch(three, 3, fitted));
    TouchCalibration rounded{}, solved{};
    ASSERT_TRUE(round_touch(fitted, rounded));
    ASSERT_TRUE(calibrate_touch(three, solved));
    EXPECT_EQ(rounded.x.of_x, solved.x.of_x);
    EXPECT_EQ(rounded.x.of_y, solved.x.of_y);
    EXPECT_EQ(rounded.y.of_x, solved.y.of_x);
    EXPECT_EQ(rounded.y.of_y, solved.y.of_y);
}

}  // namespace
}  // namespace dialplate

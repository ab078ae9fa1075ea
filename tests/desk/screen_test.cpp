#include "sim/desk/screen.hpp"

#include "sim/desk/card.hpp"
#include "sim/desk/plan.hpp"
#include "sim/desk/resample.hpp"
#include "tests/desk/coast_module.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {
namespace {

TEST(Screen, IsMeasuredElseToldElseGuessed) {
    const std::map<std::string, double> measured{{"left 1920x1080", 3.61}};
    struct Row {
        Monitor monitor;
        double pixels_per_mm;
        MeasuredScreen::Known known;
    };
    const Row rows[] = {
        {{"left", 1920, 1080, 96.0}, 3.61, MeasuredScreen::Known::measured},
        // Another monitor, or the same one in another mode, is another screen.
        {{"right", 1920, 1080, 127.0}, 5.0, MeasuredScreen::Known::told},
        {{"left", 1280, 720, 127.0}, 5.0, MeasuredScreen::Known::told},
        // 1 inch is 25.4 mm; CSS Values and Units: a pixel is 1/96 inch.
        {{"right", 1920, 1080, {}}, 3.7795, MeasuredScreen::Known::guessed},
        {{"right", 1920, 1080, 0.0}, 3.7795, MeasuredScreen::Known::guessed},
        {{"right", 1920, 1080, 4000.0}, 3.7795, MeasuredScreen::Known::guessed},
    };
    for (const Row& row : rows) {
        const MeasuredScreen screen = screen_on(row.monitor, measured);
        EXPECT_NEAR(screen.pixels_per_mm, row.pixels_per_mm, 1e-4);
        EXPECT_EQ(screen.known, row.known);
    }
}

TEST(Card, HasTheMeasuresOfTheStandardAndTellsTheScreensFromItsWidth) {
    // ISO/IEC 7810, ID-1: 85.60 x 53.98 mm. At 96 dots an inch 323.53 x 204.02 pixels.
    Card card(10, 20, 96.0 / 25.4);
    EXPECT_EQ(card.area(), (Area{10, 20, 324, 204}));
    card.widen(10);
    EXPECT_EQ(card.area().width, 334);
    EXPECT_EQ(card.area().height, 211);  // 210.62
    EXPECT_NEAR(card.pixels_per_mm(), 334 / 85.60, 1e-12);
}

TEST(Card, IsDraggedByItsEdgesAndItsCorner) {
    struct Row {
        int from_x, from_y, by_x, by_y;
        Area after;
    };
    const Row rows[] = {
        {334, 100, 26, 5, {10, 20, 350, 221}},   // right edge: 350 wide, 220.71 high
        {100, 224, 9, 17, {10, 20, 350, 221}},   // lower edge: 221 high, 350.46 wide
        {334, 224, 26, 0, {10, 20, 350, 221}},   // corner: the greater of both
        {100, 100, 30, -15, {40, 5, 324, 204}},  // inside: moved
        {500, 100, 30, 30, {10, 20, 324, 204}},  // beside it: nothing
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.from_x);
        Card card(10, 20, 96.0 / 25.4);
        card.press(row.from_x, row.from_y);
        card.move(row.from_x + row.by_x, row.from_y + row.by_y);
        card.release();
        card.move(0, 0);
        EXPECT_EQ(card.area(), row.after);
    }
}

Layout coast_centred() {
    Opening opening;
    opening.left = Millimetres{0.4};
    opening.top = Millimetres{0.4};
    opening.width = Millimetres{56.8};
    opening.height = Millimetres{42.4};
    opening.overlap = Millimetres{3.0};
    return coast_module(opening);
}

TEST(Plan, AtTrueSizeAllMillimetresAreThoseOfTheScreen) {
    // 96 dots an inch are 3.7795 pixels a mm: 57.6 mm are 217.70 pixels, 43.2 mm 163.28.
    const Plan plan = plan_window(coast_centred(), {1280, 800}, Zoom::true_size(96.0 / 25.4), true);
    EXPECT_EQ(plan.zoom, 0);
    EXPECT_EQ(plan.glass.width, 218);
    EXPECT_EQ(plan.glass.height, 163);
    EXPECT_NEAR(plan.opening.width, 56.8 * 96.0 / 25.4, 1.0);
    EXPECT_NEAR(plan.bezel.width, 62.8 * 96.0 / 25.4, 2.0);
    EXPECT_NEAR(plan.pixels_per_mm_x, 96.0 / 25.4, 1e-9);
    EXPECT_NEAR(2.0 * plan.knob.radius, 40.0 * 96.0 / 25.4, 1.0);
}

TEST(Plan, AtTrueSizePlacesOfGlassAndScreenAnswerEachOther) {
    // From 5.56 pixels a mm up, where no pixel of the glass gets lost between two of the screen.
    for (const double pixels_per_mm : {5.6, 6.3, 11.0, 21.7}) {
        SCOPED_TRACE(pixels_per_mm);
        Layout layout = coast_centred();
        layout.opening.reset();
        const Plan plan = plan_window(layout, {3840, 2160}, Zoom::true_size(pixels_per_mm), false);
        EXPECT_EQ(plan.on_screen({0, 0, 320, 240}), plan.glass);
        for (int x = plan.glass.x; x < plan.glass.right(); ++x) {
            const auto pixel = plan.glass_at(x, plan.glass.y + 3);
            ASSERT_TRUE(pixel.has_value());
            const Area area = plan.on_screen({pixel->x, pixel->y, 1, 1});
            EXPECT_TRUE(area.holds(x, plan.glass.y + 3)) << x;
        }
    }
}

// IEC 61966-2-1: code 188 is half of the light (0.5029), 156 a third (0.3325), 213 two thirds (0.6654).
TEST(Resampled, MixesLightAndNotCodes) {
    Rgb888 bars(3, 1, 0);
    bars.at(1, 0) = 0xFFFFFF;
    Canvas canvas(10, 4);
    draw_resampled(canvas, {2, 1, 2, 2}, bars, canvas.all());
    // Each covers one and a half: a third of white in two thirds of black.
    EXPECT_EQ(canvas.at(2, 1), 0x9C9C9Cu);
    EXPECT_EQ(canvas.at(3, 2), 0x9C9C9Cu);
    EXPECT_EQ(canvas.at(1, 1), 0u);
    EXPECT_EQ(canvas.at(4, 1), 0u);
    Rgb888 halves(2, 1, 0);
    halves.at(1, 0) = 0xFFFFFF;
    draw_resampled(canvas, {0, 0, 1, 1}, halves, canvas.all());
    EXPECT_EQ(canvas.at(0, 0), 0xBCBCBCu);
}

TEST(Resampled, AWholeFactorShowsThePixelsThemselves) {
    Rgb888 picture(4, 3, 0);
    for (int i = 0; i < 12; ++i)
        picture.pixels[static_cast<std::size_t>(i)] = static_cast<std::uint32_t>(i) * 0x151311u;
    Canvas canvas(12, 9);
    draw_resampled(canvas, {0, 0, 12, 9}, picture, canvas.all());
    for (int y = 0; y < 9; ++y)
        for (int x = 0; x < 12; ++x)
            EXPECT_EQ(canvas.at(x, y), picture.at(x / 3, y / 3));
}

TEST(Resampled, PartByPartIsTheSameAsAtOnce) {
    Rgb888 picture(32, 24, 0);
    for (int y = 0; y < 24; ++y)
        for (int x = 0; x < 32; ++x)
            picture.at(x, y) = static_cast<std::uint32_t>(x * 8) << 16 |
                               static_cast<std::uint32_t>(y * 10) |
                               ((x ^ y) % 2 == 0 ? 0xFF00u : 0);
    const Area over{3, 2, 47, 19};
    Canvas whole(60, 30), parts(60, 30);
    draw_resampled(whole, over, picture, whole.all());
    for (int y = 0; y < 30; y += 7)
        for (int x = 0; x < 60; x += 11)
            draw_resampled(parts, over, picture, {x, y, 11, 7});
    for (int y = 0; y < 30; ++y)
        for (int x = 0; x < 60; ++x)
            ASSERT_EQ(whole.at(x, y), parts.at(x, y));
}

}  // namespace
}  // namespace dialplate

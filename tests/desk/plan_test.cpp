#include "sim/desk/plan.hpp"

#include "tests/desk/coast_module.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

Layout coast_behind_panel() {
    Opening opening;
    opening.left = Millimetres{0.36};
    opening.top = Millimetres{-0.9};
    opening.width = Millimetres{56.88};
    opening.height = Millimetres{45.0};
    opening.overlap = Millimetres{3.6};
    return coast_module(opening);
}

TEST(Plan, DrawsOpeningAndBezelToTheScaleOfTheGlass) {
    // Worked by hand: at zoom 2 and 0.18 mm a pixel, 0.18 mm are 2 screen pixels.
    const Plan plan = plan_window(coast_behind_panel(), {1400, 900}, 2);
    EXPECT_EQ(plan.glass.width, 640);
    EXPECT_EQ(plan.glass.height, 480);
    EXPECT_EQ(plan.opening.x - plan.glass.x, 4);    // 0.36 mm
    EXPECT_EQ(plan.opening.y - plan.glass.y, -10);  // -0.9 mm
    EXPECT_EQ(plan.opening.width, 632);             // 56.88 mm
    EXPECT_EQ(plan.opening.height, 500);            // 45.0 mm
    EXPECT_EQ(plan.opening.x - plan.bezel.x, 40);   // 3.6 mm
    EXPECT_EQ(plan.bezel.bottom() - plan.opening.bottom(), 40);
}

TEST(Plan, FindsTheGlassPixelUnderThePointer) {
    const Plan plan = plan_window(coast_behind_panel(), {1400, 900}, 2);
    const Area& glass = plan.glass;
    // Pixel (2, 0) is the first that the opening leaves free on the left: it starts 4 pixels in.
    EXPECT_EQ(plan.glass_at(glass.x + 4, glass.y), (GlassPixel{2, 0}));
    EXPECT_EQ(plan.glass_at(glass.x + 5, glass.y + 1), (GlassPixel{2, 0}));
    EXPECT_EQ(plan.glass_at(glass.x + 6, glass.y + 479), (GlassPixel{3, 239}));
    // Under the trim, in the gap above the glass, and outside.
    EXPECT_EQ(plan.glass_at(glass.x + 3, glass.y), std::nullopt);
    EXPECT_EQ(plan.glass_at(glass.x + 100, glass.y - 1), std::nullopt);
    EXPECT_EQ(plan.glass_at(0, 0), std::nullopt);
}

TEST(Plan, ShowsTheWholeGlassWhereTheLayoutStatesNoOpening) {
    Layout layout = coast_behind_panel();
    layout.opening.reset();
    const Plan plan = plan_window(layout, {1400, 900}, 2);
    EXPECT_EQ(plan.opening, plan.glass);
    EXPECT_GT(plan.bezel.width, plan.opening.width);
}

TEST(Plan, ChoosesTheGreatestZoomThatFits) {
    struct Row {
        WindowSize window;
        int least, most;
    };
    // The glass alone needs 320 x 240 times the zoom; beside it stand bezel, rules, knob and strip.
    const Row rows[] = {
        {{420, 300}, 1, 1}, {{1280, 800}, 2, 2}, {{1920, 1080}, 2, 4}, {{3840, 2160}, 5, 8}};
    for (const Row& row : rows) {
        const Plan plan = plan_window(coast_behind_panel(), row.window, 0);
        SCOPED_TRACE(std::to_string(row.window.width) + " x " + std::to_string(row.window.height));
        EXPECT_GE(plan.zoom, row.least);
        EXPECT_LE(plan.zoom, row.most);
    }
}

TEST(Plan, NothingOverlapsAndAllIsInsideWhereverItFits) {
    for (int width = 900; width <= 4000; width += 155) {
        for (int height = 620; height <= 2400; height += 89) {
            SCOPED_TRACE(std::to_string(width) + " x " + std::to_string(height));
            const Plan plan = plan_window(coast_behind_panel(), {width, height}, 0);
            EXPECT_EQ(common_part(plan.panel, plan.bezel), plan.bezel);
            EXPECT_EQ(common_part(plan.panel, plan.rule_across), plan.rule_across);
            EXPECT_EQ(common_part(plan.panel, plan.rule_down), plan.rule_down);
            EXPECT_EQ(common_part(plan.panel, plan.caption), plan.caption);
            EXPECT_TRUE(common_part(plan.panel, plan.strip).empty());
            EXPECT_TRUE(common_part(plan.title, plan.rule_across).empty());
            ASSERT_GT(plan.knob.radius, 0.0);
            EXPECT_EQ(common_part(plan.panel, plan.knob_area()), plan.knob_area());
            EXPECT_EQ(common_part(plan.panel, plan.knob_caption), plan.knob_caption);
            EXPECT_TRUE(common_part(plan.knob_area(), plan.bezel).empty());
        }
    }
}

TEST(Plan, TheWantedWindowFitsTheRoomAndHoldsTheZoomItWasMadeFor) {
    Layout layout = coast_behind_panel();
    layout.opening.reset();
    for (const WindowSize room :
         {WindowSize{1366, 728}, {1920, 1040}, {2560, 1400}, {3840, 2100}}) {
        SCOPED_TRACE(room.width);
        const WindowSize window = wanted_window(layout, room, 0);
        EXPECT_LE(window.width, room.width);
        EXPECT_LE(window.height, room.height);
        EXPECT_GE(plan_window(layout, window, 0).zoom, 2);
    }
}

}  // namespace
}  // namespace dialplate

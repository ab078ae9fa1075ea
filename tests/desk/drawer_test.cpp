// The side where there is no room beside the bench.
#include "sim/desk/plan.hpp"
#include "sim/layout/reader.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace dialplate {
namespace {

const Layout& coast_example() {
    static const Layout layout =
        *load_layout(std::string{DIALPLATE_TREE} + "/layouts/coast-listener.json").layout;
    return layout;
}

bool inside(const Area& part, const Area& all) {
    return part.x >= all.x && part.y >= all.y && part.right() <= all.right() &&
           part.bottom() <= all.bottom();
}

TEST(Drawer, LiesOverTheBenchWhichStaysWhereItWas) {
    for (const WindowSize window :
         {WindowSize{640, 480}, WindowSize{480, 320}, WindowSize{780, 600}}) {
        SCOPED_TRACE(window.width);
        const Area all{0, 0, window.width, window.height};
        const Plan closed = plan_window(coast_example(), window, 0, {true, false});
        EXPECT_TRUE(closed.side.empty());
        EXPECT_TRUE(inside(closed.handle, all));
        EXPECT_EQ(closed.handle.right(), window.width);
        const Plan out = plan_window(coast_example(), window, 0, {true, true});
        EXPECT_TRUE(out.drawer);
        EXPECT_EQ(out.glass, closed.glass);
        EXPECT_EQ(out.zoom, closed.zoom);
        EXPECT_TRUE(inside(out.side, all));
        EXPECT_TRUE(inside(out.handle, all));
        EXPECT_EQ(out.handle.right(), out.side.x) << "the handle goes with the drawer";
        // As wide as in a large window, if the window is; but a strip of the bench stays in sight.
        EXPECT_EQ(out.side.width, std::min(400, window.width - 36));
    }
}

TEST(Drawer, IsNotNeededWhereThereIsRoomForBoth) {
    for (const WindowSize window :
         {WindowSize{784, 480}, WindowSize{800, 600}, WindowSize{1024, 600}})
        for (const bool drawer : {false, true}) {
            const Plan plan = plan_window(coast_example(), window, 0, {true, drawer});
            EXPECT_TRUE(plan.handle.empty());
            EXPECT_FALSE(plan.drawer);
            EXPECT_GE(plan.side.width, 340);
            EXPECT_LE(plan.panel.right(), plan.side.x);
        }
}

}  // namespace
}  // namespace dialplate

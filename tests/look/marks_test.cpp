// What is drawn over the glass: front panel and finger.
#include "sim/look/finger.hpp"
#include "sim/look/front_panel.hpp"
#include "sim/look/strokes.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {
namespace {

/// 100 x 80 pixels of 0.2 mm, read from 500 mm.
Layout small_glass() {
    Layout layout;
    layout.display.width = 100;
    layout.display.height = 80;
    layout.display.active_width = Millimetres{20.0};
    layout.display.active_height = Millimetres{16.0};
    layout.pages.emplace_back();
    return layout;
}

Item& add_key(Layout& layout, const Box& box) {
    Item key;
    key.kind = ItemKind::key;
    key.box = box;
    layout.pages[0].items.push_back(key);
    return layout.pages[0].items.back();
}

/// Box of everything that differs from a plain ground; empty if nothing does.
Box touched(const Rgb888& picture, std::uint32_t ground) {
    int left = picture.width, top = picture.height, right = 0, bottom = 0;
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x)
            if (picture.at(x, y) != ground) {
                left = std::min(left, x), right = std::max(right, x + 1);
                top = std::min(top, y), bottom = std::max(bottom, y + 1);
            }
    return right == 0 ? Box{} : Box{left, top, right - left, bottom - top};
}

}  // namespace

TEST(FrontPanel, LeavesTheGlassAloneWithoutAnOpening) {
    const Rgb888 glass(100, 80, 0x102030);
    EXPECT_EQ(behind_panel({glass, 1}, small_glass(), 0), glass);
}

TEST(FrontPanel, CoversWhatTheOpeningDoesNotShow) {
    Layout layout = small_glass();
    layout.opening = Opening{.left = Millimetres{1.0},
                             .top = Millimetres{0.6},
                             .width = Millimetres{18.0},
                             .height = Millimetres{15.0},
                             .depth = Millimetres{0.0},
                             .overlap = Millimetres{3.0}};
    // 1.0 mm are 5 columns, 0.6 mm 3 rows; 90 columns and 75 rows are seen.
    const std::uint32_t ground = 0x8090A0;
    for (const int scale : {1, 3}) {
        const Rgb888 glass(100 * scale, 80 * scale, ground);
        const Rgb888 seen = behind_panel({glass, scale}, layout, 0);
        for (int y = 0; y < seen.height; ++y)
            for (int x = 0; x < seen.width; ++x) {
                const bool shown =
                    x >= 5 * scale && x < 95 * scale && y >= 3 * scale && y < 78 * scale;
                ASSERT_EQ(seen.at(x, y) == ground, shown) << x << ", " << y;
            }
    }
}

TEST(FrontPanel, OutlinesTheItemThatLosesARow) {
    Layout layout = small_glass();
    layout.opening = Opening{.left = Millimetres{0.0},
                             .top = Millimetres{0.6},
                             .width = Millimetres{20.0},
                             .height = Millimetres{15.4},
                             .depth = Millimetres{0.0},
                             .overlap = Millimetres{3.0}};
    const Rgb888 glass(100, 80, 0x8090A0);
    add_key(layout, {.x = 10, .y = 3, .width = 30, .height = 30});
    EXPECT_EQ(behind_panel({glass, 1}, layout, 0).at(10, 20), 0x8090A0u) << "just seen whole";
    layout.pages[0].items[0].box.y = 2;
    EXPECT_NE(behind_panel({glass, 1}, layout, 0).at(10, 20), 0x8090A0u);
}

TEST(Finger, MarksTheKeysAndNothingElse) {
    Layout layout = small_glass();
    layout.touch.finger = Millimetres{4.0};
    layout.touch.scatter = Millimetres{0.5};
    const Rgb888 glass(100, 80, 0x102030);
    EXPECT_EQ(with_finger({glass, 1}, layout, 0, {}), glass) << "a page without keys";
    add_key(layout, {.x = 20, .y = 10, .width = 30, .height = 30});
    const Rgb888 seen = with_finger({glass, 1}, layout, 0, {});
    EXPECT_EQ(touched(seen, 0x102030), (Box{20, 10, 30, 30})) << "pad of 20 px inside the key";
    EXPECT_NE(with_finger({glass, 1}, layout, 0, {}).at(21, 11), seen.at(20, 10))
        << "the rim stands out";
}

TEST(Finger, DrawsThePadAsWideAsTheFinger) {
    Layout layout = small_glass();
    layout.touch.finger = Millimetres{10.0};
    layout.touch.scatter = Millimetres{0.5};
    add_key(layout, {.x = 40, .y = 30, .width = 10, .height = 10});
    const Box box = touched(with_finger({Rgb888(100, 80, 0), 1}, layout, 0, {}), 0);
    // 50 px about (45, 35), half a line and its smoothing outside: columns 20..70.
    EXPECT_NEAR(box.x, 20, 1);
    EXPECT_NEAR(box.right(), 70, 1);
    EXPECT_NEAR(box.y, 10, 1);
    EXPECT_NEAR(box.bottom(), 60, 1);
}

TEST(Strokes, LeaveOutWhatLiesOutsideThePicture) {
    Rgb888 picture(6, 4, 0);
    fill(picture, {-3, -3, 5, 4}, {0xFFFFFF});
    EXPECT_EQ(touched(picture, 0), (Box{0, 0, 2, 1}));
    trace(picture, {.x = 100, .y = 100, .across = 5, .down = 5}, 1, {0xFFFFFF});
    EXPECT_EQ(touched(picture, 0), (Box{0, 0, 2, 1}));
}

TEST(Strokes, TraceAnEllipseOnItsLine) {
    Rgb888 picture(100, 60, 0);
    trace(picture, {.x = 50, .y = 30, .across = 40, .down = 20}, 1, {0xFFFFFF});
    for (int y = 0; y < picture.height; ++y)
        for (int x = 0; x < picture.width; ++x) {
            if (picture.at(x, y) == 0) continue;
            // Every marked pixel has a point of the ellipse within a pixel and a half of its middle.
            double nearest = 1e9;
            for (int i = 0; i < 2000; ++i) {
                const double a = i * 3.14159265358979 / 1000;
                nearest = std::min(
                    nearest,
                    std::hypot(50 + 40 * std::cos(a) - x - 0.5, 30 + 20 * std::sin(a) - y - 0.5));
            }
            ASSERT_LT(nearest, 1.5) << x << ", " << y;
        }
    EXPECT_EQ(touched(picture, 0), (Box{9, 9, 82, 42}));
}

}  // namespace dialplate

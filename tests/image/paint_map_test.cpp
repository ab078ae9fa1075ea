// A page cut into rectangles: every painted pixel once, in its paint, and no other.
#include "sim/image/paint_map.hpp"

#include <gtest/gtest.h>

#include <random>

namespace dialplate {

TEST(PaintMap, CutsEveryPaintedPixelIntoExactlyOneRectangle) {
    std::mt19937 random(5);
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    for (int round = 0; round < 60; ++round) {
        PaintMap map(60, 40, 0);
        std::vector<int> twin(60 * 40, 0);
        for (int i = 0; i < 12; ++i) {
            // Partly outside, too.
            const Box box{below(70) - 8, below(50) - 8, below(25), below(25)};
            const bool take = below(3) == 0;
            const int paint = take ? PaintMap::taken : below(4);
            if (take) {
                map.take(box);
            } else {
                map.fill(box, paint);
            }
            for (int y = 0; y < 40; ++y) {
                for (int x = 0; x < 60; ++x) {
                    const bool inside =
                        x >= box.x && x < box.right() && y >= box.y && y < box.bottom();
                    if (inside) twin[static_cast<std::size_t>(y * 60 + x)] = paint;
                }
            }
        }
        std::vector<int> drawn(60 * 40, PaintMap::taken);
        int last_paint = -1;
        for (const PaintMap::Fill& fill : map.rectangles()) {
            EXPECT_GE(fill.paint, last_paint) << "sorted by paint";
            last_paint = fill.paint;
            for (int y = fill.box.y; y < fill.box.bottom(); ++y) {
                for (int x = fill.box.x; x < fill.box.right(); ++x) {
                    int& pixel = drawn[static_cast<std::size_t>(y * 60 + x)];
                    EXPECT_EQ(pixel, PaintMap::taken) << "written twice";
                    pixel = fill.paint;
                }
            }
        }
        ASSERT_EQ(drawn, twin);
    }
}

TEST(PaintMap, LeavesAnEmptyPageWhole) {
    const std::vector<PaintMap::Fill> fills = PaintMap(320, 240, 3).rectangles();
    ASSERT_EQ(fills.size(), 1U);
    EXPECT_EQ(fills[0].paint, 3);
    EXPECT_EQ(fills[0].box, (Box{0, 0, 320, 240}));
}

TEST(PaintMap, NeedsFourRectanglesAroundAnItem) {
    PaintMap map(100, 80, 0);
    map.take({20, 20, 30, 30});
    EXPECT_EQ(map.rectangles().size(), 4U);
}

}  // namespace dialplate

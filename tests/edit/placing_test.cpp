#include "sim/edit/placing.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace dialplate {

void PrintTo(const Box& box, std::ostream* out) {
    *out << box.x << ',' << box.y << ' ' << box.width << 'x' << box.height;
}

namespace {

using testing::ElementsAre;
const Box glass{0, 0, 320, 240};

TEST(Placing, AGripMovesItsSidesAndNoOther) {
    const Box box{10, 20, 30, 40};
    struct Row {
        Pull pull;
        Shift by;
        Box expected;
        const char* what;
    };
    const Row rows[] = {
        {{-1, -1}, {5, 6}, {15, 26, 25, 34}, "upper left, inwards"},
        {{1, 1}, {5, 6}, {10, 20, 35, 46}, "lower right, outwards"},
        {{0, 1}, {9, -10}, {10, 20, 30, 30}, "lower edge: sideways does nothing"},
        {{1, 0}, {-100, 0}, {10, 20, 1, 40}, "past the other side: one pixel is left"},
        {{-1, 0}, {100, 0}, {39, 20, 1, 40}, "the same from the left: the right side stays"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        EXPECT_EQ(pulled(box, row.pull, row.by), row.expected);
    }
}

TEST(Placing, BoxesStayOnTheGlass) {
    EXPECT_EQ(kept_on(glass, {-5, 230, 50, 20}), (Box{0, 220, 50, 20}));
    EXPECT_EQ(kept_on(glass, {300, -1, 50, 20}), (Box{270, 0, 50, 20}));
    EXPECT_EQ(kept_on(glass, {10, 10, 400, 20}), (Box{0, 10, 320, 20}));
}

TEST(Placing, AligningMovesOneWayOnly) {
    const std::vector<Box> boxes{{10, 10, 20, 20}, {50, 40, 40, 10}};
    EXPECT_THAT(aligned(boxes, Edge::left), ElementsAre(boxes[0], Box{10, 40, 40, 10}));
    EXPECT_THAT(aligned(boxes, Edge::right), ElementsAre(Box{70, 10, 20, 20}, boxes[1]));
    EXPECT_THAT(aligned(boxes, Edge::bottom), ElementsAre(Box{10, 30, 20, 20}, boxes[1]));
    EXPECT_THAT(aligned(boxes, Edge::middle),
                ElementsAre(Box{40, 10, 20, 20}, Box{30, 40, 40, 10}));
}

TEST(Placing, DistributingMakesTheGapsEqualWhateverTheOrder) {
    // 100 pixels from 0 to 100, 3 x 20 inked: 40 free, two gaps of 20.
    const std::vector<Box> boxes{{80, 0, 20, 9}, {0, 0, 20, 9}, {23, 0, 20, 9}};
    EXPECT_THAT(distributed(boxes, true), ElementsAre(boxes[0], boxes[1], Box{40, 0, 20, 9}));
    // 5 pixels free for two gaps: 2 and 3.
    const std::vector<Box> tight{{0, 0, 9, 10}, {0, 11, 9, 10}, {0, 25, 9, 10}};
    EXPECT_THAT(distributed(tight, false), ElementsAre(tight[0], Box{0, 12, 9, 10}, tight[2]));
}

TEST(Placing, TheNearestLineCatchesEdgesAndCentres) {
    const std::vector<Box> others{{100, 50, 40, 20}};
    const Lines lines = lines_of(glass, others, {});
    struct Row {
        Box box;
        Shift shift;
        std::optional<int> line_x, line_y;
        const char* what;
    };
    const Row rows[] = {
        {{102, 100, 30, 10}, {-2, 0}, 100, std::nullopt, "left edge to left edge"},
        {{108, 100, 30, 15}, {2, 0}, 140, std::nullopt, "right edge to right edge"},
        {{200, 53, 9, 20}, {0, -3}, std::nullopt, 50, "upper edges"},
        {{143, 117, 60, 7}, {-3, 0}, 140, 120, "beside it; the middle lies on the glass's"},
        {{200, 100, 9, 9}, {0, 0}, std::nullopt, std::nullopt, "nothing near"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        const Catch caught_on = caught(row.box, {}, lines, 4);
        EXPECT_EQ(caught_on.shift, row.shift);
        EXPECT_EQ(caught_on.line_x, row.line_x);
        EXPECT_EQ(caught_on.line_y, row.line_y);
    }
}

TEST(Placing, TheGridCatchesWhereNoLineIsNear) {
    const Lines lines = lines_of(glass, {}, {8, 8});
    EXPECT_EQ(caught({50, 100, 9, 9}, {}, lines, 4).shift, (Shift{-2, 4}));
    EXPECT_EQ(caught({2, 100, 9, 9}, {}, lines, 4).shift, (Shift{-2, 4})) << "the glass's edge";
    // A grip catches with the side that it moves.
    EXPECT_EQ(caught({50, 100, 9, 9}, {1, 0}, lines, 4).shift, (Shift{-3, 0}));
}

TEST(Placing, EdgesCatchOnAGridOfPixelsOrMillimetres) {
    struct Row {
        double pitch;
        int pixel, line;
    };
    // By hand. A pixel of a 2.8 in glass, 320 pixels on 57.6 mm, is 0.18 mm: 1 mm is 5.5556 pixels,
    // its lines lie on 0, 6, 11, 17, 22, 28.
    constexpr double millimetre = 320 / 57.6;
    const Row rows[] = {{4, 5, 4},
                        {4, 6, 8},
                        {8, 3, 0},
                        {millimetre, 5, 6},
                        {millimetre, 9, 11},
                        {millimetre, 18, 17},
                        {millimetre, 20, 22}};
    for (const Row& row : rows)
        EXPECT_EQ(nearest_grid_line(row.pitch, row.pixel), row.line) << row.pixel;
    const Lines lines{.x = {}, .y = {}, .grid = {millimetre, 4.0}};
    const Catch on = caught({18, 21, 40, 20}, {}, lines, 3);
    EXPECT_EQ(on.shift, (Shift{-1, -1}));
    // Pulled by the lower right grip: its right edge, 58, goes to 56, ten millimetres; 41 to 40.
    EXPECT_EQ(caught({18, 21, 40, 20}, {1, 1}, lines, 3).shift, (Shift{-2, -1}));
}

}  // namespace
}  // namespace dialplate

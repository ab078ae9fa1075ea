#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// An opening that leaves two columns and two rows of the glass hidden on every side: 0.36 mm at
/// 0.180 mm a pixel.
sample::Sample behind_panel(const Box& box) {
    sample::Sample s;
    s.layout.opening = Opening{.left = Millimetres{0.36},
                               .top = Millimetres{0.36},
                               .width = Millimetres{316 * 0.18},
                               .height = Millimetres{236 * 0.18},
                               .depth = Millimetres{2.0},
                               .overlap = Millimetres{3.0}};
    s.add_key(box);
    return s;
}

}  // namespace

TEST(BehindBezel, TellsAnItemOfWhichOneRowOrColumnIsHidden) {
    struct Row {
        Box box;
        int hidden;
        const char* where;
    };
    const Row rows[] = {
        {{2, 2, 316, 236}, 0, "fills the opening exactly"},
        {{1, 50, 60, 60}, 60, "1 column at the left"},
        {{259, 50, 60, 60}, 60, "1 column at the right"},
        {{50, 1, 60, 60}, 60, "1 row at the top"},
        {{50, 179, 60, 60}, 60, "1 row at the bottom"},
        {{0, 0, 60, 60}, 2 * 60 + 2 * 58, "2 columns at the left, 2 rows at the top"},
        {{0, 0, 2, 60}, 120, "2 columns at the left"},  // not to be seen at all
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.where);
        const auto found = behind_panel(row.box).found("behind-bezel");
        if (row.hidden == 0) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, Severity::must);
        EXPECT_EQ(finding.measured, row.hidden);
        EXPECT_THAT(finding.message, ::testing::HasSubstr(row.where));
    }
}

TEST(BehindBezel, CountsAPixelThatIsHiddenInPart) {
    sample::Sample s = behind_panel({.x = 2, .y = 50, .width = 60, .height = 60});
    s.layout.opening->left = Millimetres{0.37};
    EXPECT_EQ(sample::only(s.found("behind-bezel")).measured, 60);
}

TEST(BehindBezel, ShadesTheUpperEdgeForAnEyeAboveAndTheLowerForOneBelow) {
    // By hand: an eye 500 mm away at 20 degrees is 171.010 mm above the middle and 469.846 mm before the
    // glass; the upper edge, 21.24 mm above the middle and 2 mm before the glass, hides
    // 2 x (171.010 - 21.24) / 467.846 = 0.6403 mm = 3.56 px. Behind the two hidden rows that ends in row 5, so
    // that row 6 is the first one seen whole. From below, the last is row 239 - 6 = 233.
    struct Row {
        double tilt;
        Box box;
        int hidden;
        const char* where;
    };
    const Row rows[] = {
        {20, {50, 6, 60, 60}, 0, "just clear"},
        {20, {50, 5, 60, 60}, 60, "above: 60 pixels (1 row at the top)"},
        {-20, {50, 174, 60, 60}, 0, "just clear"},
        {-20, {50, 175, 60, 60}, 60, "below: 60 pixels (1 row at the bottom)"},
        {0, {50, 2, 60, 60}, 0, "straight"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.where);
        sample::Sample s = behind_panel(row.box);
        s.layout.viewing.tilt = Degrees{row.tilt};
        const auto found = s.found("behind-bezel");
        if (row.hidden == 0) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, Severity::should);
        EXPECT_EQ(finding.measured, row.hidden);
        EXPECT_THAT(finding.message, ::testing::HasSubstr(row.where));
    }
}

TEST(BehindBezel, LetsAGroundReachBehindThePanel) {
    sample::Sample s = behind_panel({.x = 20, .y = 20, .width = 60, .height = 60});
    s.add_frame({.x = 0, .y = 0, .width = 320, .height = 240}, 0, s.white);
    EXPECT_TRUE(s.found("behind-bezel").empty());
    s.layout.pages[0].items[1].frame.line = 1;
    EXPECT_EQ(s.found("behind-bezel").size(), 1u);
}

TEST(BehindBezel, SaysNothingWithoutAnOpening) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    EXPECT_TRUE(s.found("behind-bezel").empty());
}

}  // namespace dialplate

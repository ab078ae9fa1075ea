#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A key of 30 x 30 px, 5.4 mm: undersized; and another at a distance.
sample::Sample two_keys(int gap, int other_size) {
    sample::Sample s;
    s.add_key({.x = 100, .y = 100, .width = 30, .height = 30});
    s.add_key({.x = 130 + gap, .y = 100, .width = other_size, .height = other_size});
    return s;
}

std::vector<Finding> must(const sample::Sample& s) {
    std::vector<Finding> kept;
    for (const Finding& finding : s.found("touch-spacing"))
        if (finding.severity == Severity::must) kept.push_back(finding);
    return kept;
}

}  // namespace

TEST(TouchSpacing, TellsTwoSmallKeysWhoseCirclesMeetByOnePixel) {
    // 24 CSS px are 35.28 px at 0.180 mm: middles 36 px apart pass, 35 px do not (TCH-03).
    EXPECT_TRUE(must(two_keys(6, 30)).empty());
    const auto found = must(two_keys(5, 30));
    ASSERT_EQ(found.size(), 2u) << "each of the two is undersized";
    EXPECT_NEAR(*found[0].measured, 35 * 0.18, 1e-9);
    EXPECT_NEAR(*found[0].required, 6.35, 1e-9);
    EXPECT_THAT(found[0].message, ::testing::HasSubstr("the middle of key \"item 1\""));
}

TEST(TouchSpacing, TellsASmallKeyWhoseCircleMeetsALargeOneByOnePixel) {
    // Half of it, 17.64 px, from the middle to the edge: 15 px of its own and a gap of 3 pass, 2 do not.
    EXPECT_TRUE(must(two_keys(3, 60)).empty());
    const auto found = must(two_keys(2, 60));
    ASSERT_EQ(found.size(), 1u) << "the large one passes by its size";
    EXPECT_EQ(found[0].pointer, "/pages/0/items/0");
    EXPECT_NEAR(*found[0].measured, 17 * 0.18, 1e-9);
    EXPECT_NEAR(*found[0].required, 3.175, 1e-9);
}

TEST(TouchSpacing, PassesASmallKeyThatStandsAlone) {
    sample::Sample s;
    s.add_key({.x = 100, .y = 100, .width = 10, .height = 10});
    EXPECT_TRUE(s.found("touch-spacing").empty()) << "TCH-03; touch-size speaks of it";
}

TEST(TouchSpacing, PassesALargeKeyBesideAnythingByItsSize) {
    // They overlap, which is another rule's business; 36 px are 6.48 mm, no longer undersized.
    sample::Sample s;
    s.add_key({.x = 100, .y = 100, .width = 36, .height = 36});
    s.add_key({.x = 110, .y = 100, .width = 36, .height = 36});
    EXPECT_TRUE(must(s).empty()) << "TCH-02";
}

TEST(TouchSpacing, AdvisesAGapBetweenKeysUnlessBothAreLarge) {
    struct Row {
        int size, gap;
        bool noted;
        const char* source;
    };
    const Row rows[] = {
        {54, 0, false, "TCH-08: 9.6 mm are 53.33 px; large ones may touch"},
        {53, 0, true, "TCH-11: one pixel smaller"},
        {53, 17, false, "TCH-11: 3 mm are 16.67 px"},
        {53, 16, true, "TCH-11: one pixel nearer"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        sample::Sample s;
        s.add_key({.x = 10, .y = 10, .width = row.size, .height = row.size});
        s.add_key({.x = 10 + row.size + row.gap, .y = 10, .width = row.size, .height = row.size});
        const auto found = s.found("touch-spacing");
        if (!row.noted) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        EXPECT_EQ(sample::only(found).severity, Severity::note);
    }
}

}  // namespace dialplate

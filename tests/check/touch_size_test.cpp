#include "tests/check/sample.hpp"

namespace dialplate {

TEST(TouchSize, AsksForTheRoomThatAThumbNeeds) {
    struct Row {
        int width, height;
        bool series;
        double needed;  ///< Millimetres; 0: large enough.
        const char* source;
    };
    const Row rows[] = {
        {52, 52, false, 0, "TCH-07: 9.2 mm are 51.11 px at 0.180 mm"},
        {51, 52, false, 9.2, "TCH-07"},
        {52, 51, false, 9.2, "TCH-07"},
        {54, 54, true, 0, "TCH-08: 9.6 mm are 53.33 px"},
        {53, 54, true, 9.6, "TCH-08"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        sample::Sample s;
        Item& key = s.add_key({.x = 10, .y = 10, .width = row.width, .height = row.height});
        if (row.series) key.key.tap.kind = ActionKind::step;
        const auto found = s.found("touch-size");
        if (row.needed == 0) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, Severity::should);
        EXPECT_EQ(finding.required, row.needed);
        EXPECT_NEAR(*finding.measured, std::min(row.width, row.height) * 0.18, 1e-9);
        EXPECT_EQ(finding.unit, "mm");
    }
}

TEST(TouchSize, ReportsHowOftenAFingerHitsAndHowLargeTheKeyShouldBe) {
    sample::Sample s;
    // 40 px are 7.2 mm; TCH-24: a finger hits 7.2 x 7.2 mm with 0.967479.
    s.add_key({.x = 10, .y = 10, .width = 40, .height = 40});
    const Finding finding = sample::only(s.found("touch-size"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("hits it 96.7 %"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("make it 52 x 52 px"));
}

TEST(TouchSize, TakesARepeatingKeyForASeriesOfTaps) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 53, .height = 60}).key.repeat = true;
    EXPECT_EQ(sample::only(s.found("touch-size")).required, 9.6);
}

TEST(TouchSize, ProposesALargerKeyAboutItsMiddleWhereThereIsRoom) {
    struct Row {
        Box box;
        const char* at;
        const char* size;
        const char* why;
    };
    const Row rows[] = {
        {{100, 100, 50, 40},
         "[99, 94]",
         "[52, 52]",
         "2 columns and 12 rows more, half on each side"},
        {{0, 100, 40, 60}, "[0, 100]", "[52, 60]", "pushed back onto the glass"},
        {{280, 200, 40, 40}, "[268, 188]", "[52, 52]", "the same at the lower right"},
        {{100, 140, 50, 40}, "", "", "the legend below is in the way"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        sample::Sample s;
        s.add_legend({.x = 90, .y = 182, .width = 80, .height = 20}, s.white, s.black);
        s.add_key(row.box);
        const Finding finding = sample::only(s.found("touch-size"));
        if (*row.at == '\0') {
            EXPECT_TRUE(finding.cure.empty());
            continue;
        }
        ASSERT_EQ(finding.cure.size(), 2u);
        EXPECT_EQ(finding.cure[0].pointer, "/pages/0/items/1/at");
        EXPECT_EQ(finding.cure[0].value, row.at);
        EXPECT_EQ(finding.cure[1].pointer, "/pages/0/items/1/size");
        EXPECT_EQ(finding.cure[1].value, row.size);
    }
}

}  // namespace dialplate

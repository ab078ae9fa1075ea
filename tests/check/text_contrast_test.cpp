#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

sample::Sample grey_on_white(std::uint16_t rgb565) {
    sample::Sample s;
    const PaintId grey = s.paint("grey", 0);
    s.layout.paints.back().rgb565 = rgb565;
    s.add_legend({.x = 0, .y = 0, .width = 100, .height = 30}, grey, s.white);
    return s;
}

}  // namespace

TEST(TextContrast, JudgesTheColourThatTheDisplayHoldsToTheCode) {
    // C565-05: 73AE, which is what 777777 becomes, has 4.6449:1 on white. One code of green lighter,
    // 73CE = 737973, by CON-03 and CON-04: 4.4572:1.
    EXPECT_TRUE(grey_on_white(0x73AE).found("text-contrast").empty());
    const Finding finding = sample::only(grey_on_white(0x73CE).found("text-contrast"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_NEAR(*finding.measured, 4.4572, 1e-4);
    EXPECT_EQ(finding.required, 4.5);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("grey (#737973) on white (#FFFFFF)"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("reaches it"));
}

TEST(TextContrast, AsksLessOfLargeText) {
    struct Row {
        const char* file;
        int size;
        bool large;
        const char* source;
    };
    const Row rows[] = {
        {"words.bdf", 36, true, "CON-06: 18 pt are 35.28 px at 0.180 mm"},
        {"words.bdf", 35, false, "CON-06"},
        {"DejaVuSans-Bold.ttf", 28, true, "CON-06: 14 pt bold are 27.44 px"},
        {"DejaVuSans-Bold.ttf", 27, false, "CON-06"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        sample::Sample s = grey_on_white(0x9492);  // 949294: 3.0890:1
        s.layout.faces[0].file = row.file;
        s.layout.faces[0].size = row.size;
        EXPECT_EQ(s.found("text-contrast").empty(), row.large);
        // One code of green lighter, what 949494 becomes: 2.9790:1 (C565-05).
        s.layout.paints.back().rgb565 = 0x94B2;
        EXPECT_EQ(sample::only(s.found("text-contrast")).required, row.large ? 3.0 : 4.5);
    }
}

TEST(TextContrast, TakesEnlargedFacesForTheirSizeOnTheGlass) {
    sample::Sample s = grey_on_white(0x9492);
    s.layout.faces[0].size = 18;
    EXPECT_EQ(s.found("text-contrast").size(), 1u);
    s.layout.faces[0].scale = 2;
    EXPECT_TRUE(s.found("text-contrast").empty());
}

TEST(TextContrast, JudgesEveryPaletteAndNamesTheWorst) {
    sample::Sample s = grey_on_white(0x0000);
    s.layout.palettes = {"main", "day", "dim"};
    for (Paint& paint : s.layout.paints)
        paint.others = {paint.rgb565, paint.rgb565};
    EXPECT_TRUE(s.found("text-contrast").empty());
    s.layout.paints.back().others[1] = 0x73CE;
    const Finding finding = sample::only(s.found("text-contrast"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("in palette \"dim\""));
    EXPECT_NEAR(*finding.measured, 4.4572, 1e-4);
}

TEST(TextContrast, LeavesDisabledKeysAndUnlitLampsAlone) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    s.layout.looks[0].disabled = {.ink = s.white, .fill = s.white, .edge = s.white};
    Item& lamp = s.add(ItemKind::lamp, {.x = 100, .y = 0, .width = 60, .height = 30});
    lamp.lamp = {.value = s.lock,
                 .when = 1,
                 .text = "LOCK",
                 .lit = {.ink = s.black, .fill = s.white, .edge = s.white},
                 .unlit = {.ink = s.black, .fill = s.black, .edge = s.black}};
    EXPECT_TRUE(s.found("text-contrast").empty());
    s.layout.pages[0].items[1].lamp.lit = s.layout.pages[0].items[1].lamp.unlit;
    EXPECT_EQ(s.found("text-contrast").size(), 1u);
}

TEST(TextContrast, JudgesAKeyInEveryStateThatCanBeRead) {
    sample::Sample s;
    Item& key = s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    s.layout.looks[0].pressed = {.ink = s.black, .fill = s.black, .edge = s.white};
    s.layout.looks[0].active = {.ink = s.white, .fill = s.white, .edge = s.white};
    EXPECT_THAT(sample::only(s.found("text-contrast")).message, ::testing::HasSubstr("pressed"));
    key.key.active_value = s.lock;
    EXPECT_EQ(s.found("text-contrast").size(), 2u);
}

}  // namespace dialplate

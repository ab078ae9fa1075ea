#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// White on black of 250 and 0.5 cd/m2, 0.04 of the light thrown back.
Sample lit(double lux) {
    Sample s;
    s.layout.display.luminance_cd_m2 = 250;
    s.layout.display.panel_contrast = 500;
    s.layout.display.reflectance = 0.04;
    s.layout.viewing.light = Lux{lux};
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, s.white, s.black);
    return s;
}

std::vector<Finding> of_items(const Sample& s) {
    std::vector<Finding> kept;
    for (const Finding& finding : s.found("ambient-contrast"))
        if (finding.pointer != "/viewing/light_lux") kept.push_back(finding);
    return kept;
}

}  // namespace

TEST(AmbientContrast, FollowsThePublishedRatio) {
    // CON-07 (read): 6:1, prefer 10:1. By CON-14 6:1 is left at (250 - 3) / 5 = 49.4 cd/m2 thrown back,
    // which 3879.9 lx do; 10:1 at (250 - 5) / 9 = 27.2 cd/m2, 2138.0 lx.
    EXPECT_TRUE(of_items(lit(2138)).empty());
    const Finding preferred = sample::only(of_items(lit(2139)));
    EXPECT_EQ(preferred.severity, Severity::note);
    EXPECT_EQ(preferred.required, 10);
    EXPECT_EQ(sample::only(of_items(lit(3879))).severity, Severity::note);
    const Finding faint = sample::only(of_items(lit(3880)));
    EXPECT_EQ(faint.severity, Severity::should);
    EXPECT_EQ(faint.required, 6);
    EXPECT_NEAR(*faint.measured, 6.0, 0.001);
}

TEST(AmbientContrast, NotesThatBrightLightAsksForDarkInk) {
    // CON-07 (read): dark on light above 540 lx.
    EXPECT_TRUE(lit(540).found("ambient-contrast").empty());
    const Finding finding = sample::only(lit(541).found("ambient-contrast"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.pointer, "/viewing/light_lux");
    EXPECT_EQ(finding.required, 540);
}

TEST(AmbientContrast, JudgesThePaletteThatSuitsTheLight) {
    Sample s = lit(600);
    const PaintId grey = s.paint("grey", 0x404040);
    s.layout.pages[0].items[0].legend.ink = grey;  // dark on black: faint in the light of the room
    EXPECT_FALSE(of_items(s).empty());
    // A second palette has black ink on white.
    s.layout.palettes.push_back("day");
    for (Paint& paint : s.layout.paints)
        paint.others = {paint.rgb565};
    s.layout.paints[static_cast<std::size_t>(grey)].others = {0x0000};
    s.layout.paints[static_cast<std::size_t>(s.black)].others = {0xFFFF};
    EXPECT_TRUE(s.found("ambient-contrast").empty()) << "and it has dark ink on a light ground";
}

}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

struct Greys {
    sample::Sample s;
    PaintId enough = 0,
            short_of = 0;  ///< On white: 3.0890:1 and, one code of green lighter, 2.9790:1.
    Greys() {
        enough = s.paint("enough", 0);
        s.layout.paints.back().rgb565 = 0x9492;
        short_of = s.paint("short", 0);
        s.layout.paints.back().rgb565 = 0x94B2;  // what 949494 becomes, C565-05
    }
};

}  // namespace

TEST(GraphicsContrast, JudgesPicturesToTheCode) {
    Greys g;
    Item& picture = g.s.add(ItemKind::picture, {.x = 0, .y = 0, .width = 40, .height = 40});
    picture.picture = {.file = "antenna.png", .ink = g.enough, .ground = g.s.white, .tones = {}};
    EXPECT_TRUE(g.s.found("graphics-contrast").empty());
    picture.picture.ink = g.short_of;
    const Finding finding = sample::only(g.s.found("graphics-contrast"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_NEAR(*finding.measured, 2.9790, 1e-4);
    EXPECT_EQ(finding.required, 3);
}

TEST(GraphicsContrast, JudgesEveryPartOfAMeterThatIsShown) {
    Greys g;
    Item& item = g.s.add(ItemKind::meter, {.x = 0, .y = 0, .width = 200, .height = 40});
    Meter& meter = item.meter;
    meter.to = 100;
    meter.ink = g.enough;
    meter.ground = g.s.white;
    meter.unlit = g.s.white;
    meter.over = g.short_of;
    meter.over_from = 101;
    meter.peak_ink = g.short_of;
    meter.mark_ink = g.short_of;
    EXPECT_TRUE(g.s.found("graphics-contrast").empty()) << "no over, no peak, no marks";
    meter.over_from = 80;
    EXPECT_THAT(sample::only(g.s.found("graphics-contrast")).message,
                ::testing::HasSubstr("above the limit"));
    meter.over_from = 101;
    meter.peak = true;
    EXPECT_THAT(sample::only(g.s.found("graphics-contrast")).message,
                ::testing::HasSubstr("its peak"));
    meter.peak = false;
    meter.marks.push_back({.at = 50, .text = "", .pointer = ""});
    EXPECT_THAT(sample::only(g.s.found("graphics-contrast")).message,
                ::testing::HasSubstr("its ticks"));
    meter.marks.clear();
    meter.ink = g.short_of;
    EXPECT_THAT(sample::only(g.s.found("graphics-contrast")).message,
                ::testing::HasSubstr("its bar"));
}

TEST(GraphicsContrast, JudgesTicksAndPointerOfAScale) {
    Greys g;
    Item& item = g.s.add(ItemKind::scale, {.x = 0, .y = 0, .width = 200, .height = 40});
    item.scale.ink = g.enough;
    item.scale.ground = g.s.white;
    item.scale.label_ink = g.s.black;
    item.scale.pointer_ink = g.enough;
    EXPECT_TRUE(g.s.found("graphics-contrast").empty());
    item.scale.pointer_ink = g.short_of;
    EXPECT_EQ(g.s.found("graphics-contrast").size(), 1u);
}

}  // namespace dialplate

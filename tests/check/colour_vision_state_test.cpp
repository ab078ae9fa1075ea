#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

Sample with_lamp(std::uint32_t lit, std::uint32_t unlit) {
    Sample s;
    const PaintId on = s.paint("on", lit), off = s.paint("off", unlit);
    Item& item = s.add(ItemKind::lamp, {.x = 10, .y = 100, .width = 40, .height = 40});
    item.lamp.value = s.lock;
    item.lamp.when = 1;
    item.lamp.face = Sample::words;
    item.lamp.lit = {.ink = s.white, .fill = on, .edge = on};
    item.lamp.unlit = {.ink = s.white, .fill = off, .edge = off};
    return s;
}

}  // namespace

TEST(ColourVisionState, FindsRedAndGreenOfOneLightness) {
    // CVD-07 (derived): red and green are 19.5 apart for deutan eyes, 86.6 for others.
    const Finding finding =
        sample::only(with_lamp(0xFF0000, 0x00FF00).found("colour-vision-state"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_NEAR(*finding.measured, 19.5, 0.2);
    EXPECT_EQ(finding.required, 20);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("deutan"));
}

TEST(ColourVisionState, IsContentOneDifferenceFurther) {
    Sample s = with_lamp(0xFF0000, 0x00FF00);
    Threshold threshold;
    threshold.rule = "colour-vision-state";
    threshold.figure = "least";
    threshold.value = 19;
    s.layout.thresholds = {threshold};
    EXPECT_TRUE(s.found("colour-vision-state").empty());
    EXPECT_TRUE(with_lamp(0xFFC040, 0x202020).found("colour-vision-state").empty());
}

TEST(ColourVisionState, OnlyNotesAMeterWhoseBarSaysItByItsLengthAsWell) {
    Sample s;
    const PaintId red = s.paint("red", 0xFF0000), green = s.paint("green", 0x00FF00);
    Item& item = s.add(ItemKind::meter, {.x = 10, .y = 100, .width = 100, .height = 20});
    item.meter.value = s.lock;
    item.meter.to = 10;
    item.meter.ink = green;
    item.meter.over = red;
    item.meter.over_from = 5;
    item.meter.ground = item.meter.unlit = s.black;
    EXPECT_EQ(sample::only(s.found("colour-vision-state")).severity, Severity::note);
    s.layout.pages[0].items[0].meter.over_from = 11;  // never
    EXPECT_TRUE(s.found("colour-vision-state").empty());
}

}  // namespace dialplate

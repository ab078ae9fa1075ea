#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

struct WithLamp {
    sample::Sample s;
    PaintId enough = 0, short_of = 0;  ///< Against white: 3.0890:1 and 2.9790:1, one code apart.
    WithLamp() {
        enough = s.paint("enough", 0);
        s.layout.paints.back().rgb565 = 0x9492;
        short_of = s.paint("short", 0);
        s.layout.paints.back().rgb565 = 0x94B2;  // what 949494 becomes, C565-05
        Item& item = s.add(ItemKind::lamp, {.x = 10, .y = 10, .width = 60, .height = 30});
        item.lamp = {.value = s.lock,
                     .when = 1,
                     .text = "LOCK",
                     .lit = {.ink = s.black, .fill = s.white, .edge = s.black},
                     .unlit = {.ink = s.black, .fill = s.white, .edge = s.black}};
    }
    Lamp& lamp() { return s.layout.pages[0].items[0].lamp; }
};

}  // namespace

TEST(StateContrast, TellsALampWhoseStatesAreOneCodeTooAlike) {
    WithLamp with;
    with.lamp().unlit.fill = with.enough;
    EXPECT_TRUE(with.s.found("state-contrast").empty());
    with.lamp().unlit.fill = with.short_of;
    const Finding finding = sample::only(with.s.found("state-contrast"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_NEAR(*finding.measured, 2.9790, 1e-4);
}

TEST(StateContrast, CountsTheEdgeOnlyWhereThereIsOne) {
    WithLamp with;
    with.lamp().unlit.edge = with.s.white;
    EXPECT_EQ(with.s.found("state-contrast").size(), 1u);
    with.lamp().edge = 1;
    EXPECT_TRUE(with.s.found("state-contrast").empty());
}

TEST(StateContrast, CountsTheInkOnlyWhereThereIsText) {
    WithLamp with;
    with.lamp().unlit.ink = with.s.white;
    EXPECT_TRUE(with.s.found("state-contrast").empty());
    with.lamp().text.clear();
    EXPECT_EQ(with.s.found("state-contrast").size(), 1u);
}

TEST(StateContrast, AsksTheSameOfKeysThatCanBeActive) {
    sample::Sample s;
    Item& key = s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    s.layout.looks[0].active = s.layout.looks[0].idle;
    EXPECT_TRUE(s.found("state-contrast").empty()) << "this key is never active";
    key.key.active_value = s.lock;
    EXPECT_EQ(s.found("state-contrast").size(), 1u);
}

}  // namespace dialplate

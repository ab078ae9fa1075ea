#include "tests/check/sample.hpp"

namespace dialplate {

TEST(PressFeedback, AsksForOneCodeOfDifference) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    EXPECT_EQ(sample::only(s.found("press-feedback")).severity, Severity::should);

    look.pressed.fill = s.paint("near white", 0xFFFBFF);  // one code of green below white
    EXPECT_TRUE(s.found("press-feedback").empty());
}

TEST(PressFeedback, ComparesWhatTheDisplayHolds) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    look.pressed.fill = s.paint("other white", 0xFEFEFE);  // C565-01: FFFF as well
    EXPECT_EQ(s.found("press-feedback").size(), 1u);
}

TEST(PressFeedback, DoesNotCountAnEdgeThatIsNotThere) {
    sample::Sample s;
    Item& key = s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    Look& look = s.layout.looks[0];
    look.pressed = look.idle;
    look.pressed.edge = s.black;
    key.key.edge = 1;
    EXPECT_TRUE(s.found("press-feedback").empty());
    key.key.edge = 0;
    EXPECT_EQ(s.found("press-feedback").size(), 1u);
}

TEST(PressFeedback, ProposesInkAndFillExchangedWhereNothingIsWritten) {
    sample::Sample s;
    Look& look = s.layout.looks[0];
    look.pointer = "/looks/plain";
    look.pressed = look.idle;
    s.add_key({.x = 100, .y = 100, .width = 60, .height = 60});
    const Finding finding = sample::only(s.found("press-feedback"));
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/looks/plain/pressed");
    EXPECT_EQ(finding.cure[0].value, R"({"ink": "white", "fill": "black", "edge": "white"})");

    s.layout.places["/looks/plain/pressed"] = {.line = 3, .column = 5};
    EXPECT_TRUE(sample::only(s.found("press-feedback")).cure.empty()) << "the author's own";
    s.layout.places.clear();
    look.idle.ink = look.pressed.ink = look.idle.fill;
    EXPECT_TRUE(sample::only(s.found("press-feedback")).cure.empty()) << "it would look the same";
}

}  // namespace dialplate

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

}  // namespace dialplate

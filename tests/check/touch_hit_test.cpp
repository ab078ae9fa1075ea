#include "tests/check/sample.hpp"

namespace dialplate {

TEST(TouchHit, TellsAKeyThatIsOnePixelTooSmall) {
    // TCH-26: 95 % need 6.7094 mm, 37.27 px at 0.180 mm.
    sample::Sample s;
    Item& key = s.add_key({.x = 100, .y = 100, .width = 38, .height = 38});
    EXPECT_TRUE(s.found("touch-hit").empty());
    key.box.width = key.box.height = 37;
    const Finding finding = sample::only(s.found("touch-hit"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.unit, "%");
    EXPECT_EQ(finding.required, 95.0);
    EXPECT_LT(*finding.measured, 95.0);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("6.7 mm both ways (38 x 38 px) reach it"));
}

TEST(TouchHit, TakesTheScatterOfTheLayout) {
    sample::Sample s;
    s.add_key({.x = 100, .y = 100, .width = 38, .height = 38});
    s.layout.touch.scatter = Millimetres{1.6};
    EXPECT_EQ(s.found("touch-hit").size(), 1u);
}

}  // namespace dialplate

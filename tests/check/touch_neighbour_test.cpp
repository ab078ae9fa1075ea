#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A key of 34 px, 3.06 mm from its middle to its edge, and a large one beside it.
sample::Sample two_keys(int gap) {
    sample::Sample s;
    s.add_key({.x = 100, .y = 100, .width = 34, .height = 60});
    s.add_key({.x = 134 + gap, .y = 100, .width = 60, .height = 60});
    return s;
}

}  // namespace

TEST(TouchNeighbour, TellsANeighbourThatIsOnePixelTooNear) {
    // 1 % lies beyond 2.326 standard deviations (normal table), 3.489 mm: a gap of 0.429 mm, 2.39 px.
    EXPECT_TRUE(two_keys(3).found("touch-neighbour").empty());
    const Finding finding = sample::only(two_keys(2).found("touch-neighbour"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.pointer, "/pages/0/items/0");
    EXPECT_EQ(finding.required, 1.0);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("on key \"item 1\""));
}

}  // namespace dialplate

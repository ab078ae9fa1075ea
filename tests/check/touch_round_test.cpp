#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// Keys of 40 px, 7.2 mm, of which 0.967479 of the taps hit each (TCH-24).
sample::Sample row_of(int keys) {
    sample::Sample s;
    for (int i = 0; i < keys; ++i)
        s.add_key({.x = 10 + i * 70, .y = 10, .width = 40, .height = 40});
    return s;
}

}  // namespace

TEST(TouchRound, TellsAPageThatHasOneKeyTooMany) {
    // 1 - 0.967479^3 = 0.09443, 1 - 0.967479^4 = 0.12388.
    EXPECT_TRUE(row_of(3).found("touch-round").empty());
    const Finding finding = sample::only(row_of(4).found("touch-round"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.pointer, "/pages/0");
    EXPECT_NEAR(*finding.measured, 12.388, 0.001);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("each of its 4 keys once"));
}

}  // namespace dialplate

#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

namespace {

Sample with_small_letters(int x_height) {
    Sample s;
    sample::begin_face(s, 17);
    s.image.measures[0].x_height = x_height;
    sample::draw_h(s, {.width = 12, .height = 17, .blank_right = 3});
    sample::draw_h(s, {.width = 9, .height = x_height, .blank_right = 3}, U'n');
    return s;
}

}  // namespace

TEST(XHeight, IsNotedBelowTheLeastAngle) {
    // LEG-12 (memory): 12 px of 0.180 mm at 500 mm are 14.85'; LEG-10: 13 px reach 16'.
    const Finding finding = sample::only(with_small_letters(12).found("x-height"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(*finding.measured, 14.85, 0.005);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("13 px reach it"));
    EXPECT_TRUE(with_small_letters(13).found("x-height").empty());
}

TEST(XHeight, IsOfNoConcernWhereOnlyCapitalsAreShown) {
    Sample s;
    sample::begin_face(s, 17);
    s.image.measures[0].x_height = 5;
    sample::draw_h(s, {.width = 12, .height = 17, .blank_right = 3});
    EXPECT_TRUE(s.found("x-height").empty());
}

}  // namespace dialplate

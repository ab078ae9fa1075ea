#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

sample::Sample with_text(int width, int room_width, int height, int room_height) {
    sample::Sample s;
    s.add_legend({.x = 0, .y = 0, .width = 60, .height = 22}, s.white, s.black);
    TextExtent text;
    text.what = "SIGNAL";
    text.width = width;
    text.room_width = room_width;
    text.height = height;
    text.room_height = room_height;
    s.image.texts_shown.push_back(text);
    return s;
}

}  // namespace

TEST(TextFits, TellsATextThatIsOnePixelTooWideOrTooHigh) {
    EXPECT_TRUE(with_text(60, 60, 22, 22).found("text-fits").empty());

    const Finding wide = sample::only(with_text(61, 60, 22, 22).found("text-fits"));
    EXPECT_EQ(wide.severity, Severity::must);
    EXPECT_EQ(wide.measured, 61);
    EXPECT_EQ(wide.required, 60);
    EXPECT_THAT(wide.message, ::testing::HasSubstr("\"SIGNAL\" is 61 px wide"));

    const Finding high = sample::only(with_text(60, 60, 23, 22).found("text-fits"));
    EXPECT_EQ(high.measured, 23);
    EXPECT_EQ(high.required, 22);
    EXPECT_THAT(high.message, ::testing::HasSubstr("23 px high"));
}

TEST(TextFits, SpeaksOfTheWidestTextOfAnItem) {
    sample::Sample s = with_text(61, 60, 22, 22);
    s.image.texts_shown.push_back(s.image.texts_shown[0]);
    s.image.texts_shown[1].what = "29.999.999";
    s.image.texts_shown[1].width = 90;
    const Finding finding = sample::only(s.found("text-fits"));
    EXPECT_EQ(finding.measured, 90);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("29.999.999"));
}

}  // namespace dialplate

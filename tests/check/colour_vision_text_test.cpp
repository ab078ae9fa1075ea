#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

TEST(ColourVisionText, FindsRedThatOnlyMostEyesCanRead) {
    // CVD-06 (derived): red on black falls from 5.25:1 to 3.285:1 for protan eyes.
    Sample s;
    const PaintId red = s.paint("red", 0xFF0000);
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, red, s.black);
    EXPECT_TRUE(s.found("text-contrast").empty());
    const Finding finding = sample::only(s.found("colour-vision-text"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_NEAR(*finding.measured, 3.285, 0.001);
    EXPECT_EQ(finding.required, 4.5);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("protan"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("ink #"));
}

TEST(ColourVisionText, IsContentWithTheInkThatItOffers) {
    Sample s;
    const PaintId red = s.paint("red", 0xFF0000);
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, red, s.black);
    const std::string message = sample::only(s.found("colour-vision-text")).message;
    const std::size_t at = message.find(": ink #");
    ASSERT_NE(at, std::string::npos);
    const auto offered =
        static_cast<std::uint32_t>(std::stoul(message.substr(at + 7, 6), nullptr, 16));
    Sample cured;
    const PaintId ink = cured.paint("ink", offered);
    cured.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, ink, cured.black);
    EXPECT_TRUE(cured.found("colour-vision-text").empty()) << message;
}

TEST(ColourVisionText, LeavesToTextContrastWhatNobodyCanRead) {
    Sample s;
    const PaintId faint = s.paint("faint", 0x800000);
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, faint, s.black);
    EXPECT_FALSE(s.found("text-contrast").empty());
    EXPECT_TRUE(s.found("colour-vision-text").empty());
}

TEST(ColourVisionText, OnlyNotesWhatIsHardForTritanEyesAlone) {
    // Worked out apart from this program, from the matrices of Machado et al. 2009 and WCAG's ratio on RGB565 as
    // expanded: 4.882:1 for most eyes, 4.728 protan, 4.961 deutan, 4.341 tritan.
    Sample s;
    const PaintId ink = s.paint("sea", 0x006699), ground = s.paint("mint", 0x66FF99);
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, ink, ground);
    const Finding finding = sample::only(s.found("colour-vision-text"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(*finding.measured, 4.341, 0.001);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("tritan"));
}

}  // namespace dialplate

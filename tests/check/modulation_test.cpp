#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// Capitals that subtend nearly that angle, ink and ground of that ratio: pixels are made to fit.
Sample small_text(double arcmin, double ratio) {
    Sample s;
    s.image.measures[0].capital = 10;
    const double height = 500.0 * arcmin / 3437.7468;  // radians are small
    s.layout.display.active_width = Millimetres{height / 10.0 * 240.0};
    s.layout.display.active_height = Millimetres{height / 10.0 * 320.0};
    s.layout.viewing.light = Lux{0};
    s.layout.display.luminance_cd_m2 = 100;
    s.layout.display.panel_contrast = ratio;
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, s.white, s.black);
    return s;
}

}  // namespace

TEST(Modulation, FollowsThePublishedRule) {
    struct Row {
        double arcmin, modulation, ratio;
        const char* source;
    };
    const Row rows[] = {
        {16, 0.58, 3.7619, "CON-08 (read)"},
        {14, 0.72, 6.1429, "CON-08 (read)"},
        {12, 0.86, 13.2857, "CON-08 (read)"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_TRUE(small_text(row.arcmin, row.ratio * 1.002).found("modulation").empty());
        const Finding finding =
            sample::only(small_text(row.arcmin, row.ratio * 0.998).found("modulation"));
        EXPECT_NEAR(*finding.required, row.modulation, 0.0005);
        EXPECT_NEAR(*finding.measured, row.modulation, 0.001);
    }
}

TEST(Modulation, IsOfNoConcernToLargerAndToUnreadableCharacters) {
    EXPECT_FALSE(small_text(16.9, 2).found("modulation").empty());
    EXPECT_TRUE(small_text(17.1, 2).found("modulation").empty());
    EXPECT_TRUE(small_text(9.9, 2).found("modulation").empty()) << "character-height says it";
}

}  // namespace dialplate

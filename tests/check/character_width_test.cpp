#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

TEST(CharacterWidth, FollowsThePublishedRange) {
    struct Row {
        int width, height;
        bool found;
        Severity severity;
        const char* source;
    };
    const Row rows[] = {
        {5, 7, false, {}, "LEG-13: 5 x 7 is 0.714, passes (read)"},
        {6, 12, true, Severity::note, "LEG-13: 0.5 is allowed; LEG-14: under 3:5 (read)"},
        {4, 10, true, Severity::should, "LEG-13: 0.4 fails (read)"},
        {6, 10, false, {}, "LEG-14: 3:5 just passes (read)"},
        {10, 10, false, {}, "LEG-14: 1:1 just passes (read)"},
        {11, 10, true, Severity::should, "LEG-13: over 1.0, one pixel more"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Sample s;
        sample::begin_face(s, row.height);
        sample::draw_h(s, {.width = row.width, .height = row.height, .blank_right = 2});
        const auto found = s.found("character-width");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (!row.found) continue;
        EXPECT_EQ(found[0].severity, row.severity);
        EXPECT_EQ(found[0].pointer, "/faces/words");
    }
}

TEST(CharacterWidth, SeesHeightForeshortenedByTheTilt) {
    Sample s;
    sample::begin_face(s, 20);
    sample::draw_h(s, {.width = 14, .height = 20, .blank_right = 3});  // 0.7
    s.layout.viewing.tilt = Degrees{45};                               // 0.99
    EXPECT_TRUE(s.found("character-width").empty());
    s.layout.viewing.tilt = Degrees{46};  // 1.008
    EXPECT_EQ(sample::only(s.found("character-width")).severity, Severity::should);
}

TEST(CharacterWidth, SaysHowManyPixelsWouldDo) {
    Sample s;
    sample::begin_face(s, 20);
    sample::draw_h(s, {.width = 9, .height = 20, .blank_right = 3});
    const Finding finding = sample::only(s.found("character-width"));
    EXPECT_NEAR(*finding.measured, 0.45, 1e-9);
    EXPECT_EQ(finding.required, 0.5);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("10 px of width reach it"));
}

}  // namespace dialplate

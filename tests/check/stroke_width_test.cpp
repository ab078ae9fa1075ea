#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

TEST(StrokeWidth, FollowsThePublishedShares) {
    struct Row {
        int stroke, height;
        bool found;
        Severity severity;
        const char* source;
    };
    const Row rows[] = {
        {2, 17, false, {}, "LEG-17: 2 px on 17 px is fine (memory)"},
        {1, 17, true, Severity::should, "LEG-16: 1 px on 17 px is too thin (memory)"},
        {3, 24, false, {}, "LEG-16: 1/8 (read)"},
        {1, 12, true, Severity::note, "LEG-17: 1/12 just passes, under 1/10 (memory)"},
        {1, 13, true, Severity::should, "LEG-17: one pixel higher is under 1/12 (memory)"},
        {1, 10, false, {}, "LEG-16: 1/10 just passes (memory)"},
        {4, 20, false, {}, "LEG-17: 20 % just passes (memory)"},
        {5, 20, true, Severity::note, "LEG-17: one pixel more"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Sample s;
        sample::begin_face(s, row.height);
        sample::draw_h(s,
                       {.width = 14, .height = row.height, .stroke = row.stroke, .blank_right = 6});
        const auto found = s.found("stroke-width");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (row.found) {
            EXPECT_EQ(found[0].severity, row.severity);
        }
    }
}

TEST(StrokeWidth, SaysHowManyPixelsWouldDo) {
    Sample s;
    sample::begin_face(s, 17);
    sample::draw_h(s, {.width = 12, .height = 17, .stroke = 1, .blank_right = 4});
    EXPECT_THAT(sample::only(s.found("stroke-width")).message,
                ::testing::HasSubstr("2 px reach it"));
}

}  // namespace dialplate

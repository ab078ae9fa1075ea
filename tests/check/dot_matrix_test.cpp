#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

TEST(DotMatrix, FollowsThePublishedMatrices) {
    struct Row {
        int width, height;
        bool small_letters;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {5, 7, false, false, "LEG-20: 5 x 7 does for figures and capitals (read, second-hand)"},
        {4, 7, false, true, "one dot less across"},
        {5, 6, false, true, "one dot less down"},
        {5, 7, true, true, "LEG-20: 5 x 7 with small letters (read, second-hand)"},
        {7, 9, true, false, "LEG-20: 7 x 9 does for text"},
        {7, 8, true, true, "one dot less down"},
        {6, 9, true, true, "one dot less across"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Sample s;
        sample::begin_face(s, row.height);
        sample::draw_h(s, {.width = row.width, .height = row.height, .blank_right = 1});
        if (row.small_letters) sample::draw_h(s, {.width = 4, .height = 5, .blank_right = 1}, U'n');
        EXPECT_EQ(s.found("dot-matrix").size(), row.found ? 1u : 0u);
    }
}

TEST(DotMatrix, IsNotImpressedByEnlarging) {
    Sample s;
    sample::begin_face(s, 24);
    s.layout.faces[0].scale = 4;
    sample::draw_h(s, {.width = 5, .height = 6, .blank_right = 1});
    const Finding finding = sample::only(s.found("dot-matrix"));
    EXPECT_EQ(finding.measured, 6);
    EXPECT_EQ(finding.required, 7);
}

TEST(DotMatrix, LeavesSegmentDigitsAlone) {
    Sample s;
    sample::begin_face(s, 6);
    s.layout.faces[0].kind = FaceKind::segment;
    s.layout.faces[0].segment_width = 3;
    s.layout.faces[0].segment_height = 6;
    s.layout.faces[0].segment_stroke = 1;
    EXPECT_TRUE(s.found("dot-matrix").empty());
}

}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {

TEST(TouchEdge, TellsAKeyThatKeepsOnePixelTooLittle) {
    struct Row {
        Box box;
        bool noted;
        const char* by_hand;
    };
    const Row rows[] = {
        {{0, 100, 47, 60}, false, "8.46 mm less 2 mm"},
        {{0, 100, 46, 60}, true, "8.28 mm less 2 mm: 6.28 mm, needed are 6.35 mm"},
        {{274, 100, 46, 60}, true, "the same at the right"},
        {{100, 0, 60, 46}, true, "at the top"},
        {{100, 194, 60, 46}, true, "at the bottom"},
        {{12, 100, 30, 30}, false, "small, but not by the edge: touch-size speaks of it"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.by_hand);
        sample::Sample s;
        s.add_key(row.box);
        const auto found = s.found("touch-edge");
        EXPECT_EQ(found.size(), row.noted ? 1u : 0u);
        for (const Finding& finding : found)
            EXPECT_EQ(finding.severity, Severity::note);
    }
}

}  // namespace dialplate

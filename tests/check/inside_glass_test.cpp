#include "tests/check/sample.hpp"

namespace dialplate {

TEST(InsideGlass, TellsAnItemThatReachesOnePixelPastAnEdge) {
    struct Row {
        Box box;
        int beyond;
        const char* edge;
    };
    const Row rows[] = {
        {{0, 0, 320, 240}, 0, "fills the glass"},
        {{0, 0, 321, 240}, 1, "right"},
        {{0, 0, 320, 241}, 1, "bottom"},
        {{-1, 0, 100, 60}, 1, "left"},
        {{0, -1, 100, 60}, 1, "top"},
        {{300, 10, 100, 60}, 80, "right"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.edge);
        sample::Sample s;
        s.add_key(row.box);
        const auto found = s.found("inside-glass");
        if (row.beyond == 0) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, Severity::must);
        EXPECT_EQ(finding.measured, row.beyond);
        EXPECT_EQ(finding.required, 0);
        EXPECT_EQ(finding.pointer, "/pages/0/items/0");
        EXPECT_THAT(finding.message,
                    ::testing::HasSubstr(std::string("past the ") + row.edge + " edge"));
    }
}

TEST(InsideGlass, MeasuresTheGlassAsItIsTurned) {
    sample::Sample s;
    s.layout.turn = 0;  // 240 x 320
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 320});
    EXPECT_TRUE(s.found("inside-glass").empty());
    s.add_key({.x = 181, .y = 0, .width = 60, .height = 60});
    EXPECT_EQ(sample::only(s.found("inside-glass")).measured, 1);
}

}  // namespace dialplate

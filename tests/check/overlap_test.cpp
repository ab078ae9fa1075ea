#include "tests/check/sample.hpp"

namespace dialplate {

TEST(Overlap, PassesItemsThatTouchAndTellsThoseThatShareAPixel) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    s.add_key({.x = 60, .y = 0, .width = 60, .height = 60});
    EXPECT_TRUE(s.found("overlap").empty());

    s.layout.pages[0].items[1].box.x = 59;
    const Finding finding = sample::only(s.found("overlap"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.pointer, "/pages/0/items/1");
    EXPECT_EQ(finding.measured, 60);  // one column of 60 rows
    EXPECT_THAT(finding.message, ::testing::HasSubstr("key \"item 1\" overlaps key \"item 0\""));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("1 px sideways or 60 px up or down"));
}

TEST(Overlap, SaysHowFarAnItemWithinAnotherHasToGo) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 200, .height = 100});
    s.add_key({.x = 120, .y = 10, .width = 60, .height = 60});
    // By hand: to the right edge 200 - 120 = 80, upwards 70 - 0 = 70.
    EXPECT_THAT(sample::only(s.found("overlap")).message,
                ::testing::HasSubstr("80 px sideways or 70 px up or down"));
}

TEST(Overlap, KnowsThatPagesAreNotSeenTogether) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    s.page("other");
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    EXPECT_TRUE(s.found("overlap").empty());
}

TEST(Overlap, LetsAFrameHoldItemsInsideItsLine) {
    struct Row {
        Box item;
        int line;
        bool filled;
        bool clear;
        const char* where;
    };
    // The frame covers x 100..199 and y 100..199.
    const Row rows[] = {
        {{102, 102, 96, 96}, 2, true, true, "fills the inside exactly"},
        {{101, 102, 96, 96}, 2, true, false, "one pixel on the line at the left"},
        {{102, 102, 97, 96}, 2, true, false, "one pixel on the line at the right"},
        {{102, 102, 96, 97}, 2, true, false, "one pixel on the line at the bottom"},
        {{102, 102, 96, 97}, 2, false, false, "on the line of a frame that is not filled"},
        {{102, 102, 96, 96}, 2, false, true, "inside a frame that is not filled"},
        {{100, 100, 100, 100}, 0, true, true, "all of a fill without a line"},
        {{150, 150, 60, 20}, 0, true, false, "half in, half out of a fill without a line"},
        {{150, 150, 60, 20}, 0, false, true, "across a frame that draws nothing"},
        {{40, 100, 60, 60}, 2, true, true, "beside it"},
        {{41, 100, 60, 60}, 2, true, false, "beside it, one pixel too far"},
        {{90, 90, 120, 120}, 2, true, false, "a key around the frame"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.where);
        for (const bool frame_first : {true, false}) {
            sample::Sample s;
            const auto frame = [&] {
                s.add_frame({.x = 100, .y = 100, .width = 100, .height = 100},
                            row.line,
                            row.filled ? std::optional<PaintId>(s.white) : std::nullopt);
            };
            if (frame_first) frame();
            s.add_key(row.item);
            if (!frame_first) frame();
            EXPECT_EQ(s.found("overlap").empty(), row.clear);
        }
    }
}

TEST(Overlap, LetsFramesHoldFramesButNotCrossThem) {
    sample::Sample s;
    s.add_frame({.x = 0, .y = 0, .width = 100, .height = 100}, 1, s.white);
    s.add_frame({.x = 1, .y = 1, .width = 98, .height = 98}, 1, s.black);
    EXPECT_TRUE(s.found("overlap").empty());
    s.add_frame({.x = 50, .y = 50, .width = 100, .height = 20}, 1);
    EXPECT_EQ(s.found("overlap").size(), 1u);
}

TEST(Overlap, SpeaksOnceForAnItemThatMeetsSeveral) {
    sample::Sample s;
    s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    s.add_key({.x = 60, .y = 0, .width = 60, .height = 60});
    s.add_key({.x = 50, .y = 0, .width = 60, .height = 60});
    const Finding finding = sample::only(s.found("overlap"));
    EXPECT_EQ(finding.pointer, "/pages/0/items/2");
    EXPECT_EQ(finding.measured, 50 * 60);  // the greater of the two
    EXPECT_THAT(finding.message, ::testing::HasSubstr("1 other item as well"));
}

}  // namespace dialplate

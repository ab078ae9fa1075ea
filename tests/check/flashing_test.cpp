#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

struct Flasher {
    double changes_per_second = 8;
    std::uint32_t on = 0xFFFFFF, off = 0x000000;
    Box box{.x = 0, .y = 0, .width = 320, .height = 240};  ///< The whole 2.8 inch panel.
};

Sample flashing(const Flasher& flasher) {
    Sample s;
    s.layout.values[0].per_second = flasher.changes_per_second;
    const PaintId on = s.paint("on", flasher.on), off = s.paint("off", flasher.off);
    Item& item = s.add(ItemKind::lamp, flasher.box);
    item.lamp.value = s.lock;
    item.lamp.when = 1;
    item.lamp.lit = {.ink = on, .fill = on, .edge = on};
    item.lamp.unlit = {.ink = off, .fill = off, .edge = off};
    return s;
}

}  // namespace

TEST(Flashing, FollowsThePublishedLimits) {
    struct Row {
        Flasher flasher;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {{.changes_per_second = 4}, false, "SAF-10: black and white at 2 Hz pass (read)"},
        {{.changes_per_second = 6}, false, "SAF-09: three flashes a second just pass (read)"},
        {{.changes_per_second = 6.1}, true, "SAF-09: a little more"},
        {{.changes_per_second = 8}, true, "SAF-10: 4 Hz fail (read)"},
        // 0.85 and 1.0 of relative luminance: grey of code 237 (linear 0.8469).
        {{.on = 0xFFFFFF, .off = 0xEDEDED}, false, "SAF-10: both above 0.80 are no flash (read)"},
        // 10 % of white and just less, as RGB565 holds them: 0x595959 is linear 0.1, 0x525252 0.084.
        {{.on = 0x5A5D5A, .off = 0x000000}, true, "SAF-10: 10 % of white or more"},
        {{.on = 0x525152, .off = 0x000000}, false, "SAF-10: less than 10 %"},
        {{.on = 0xFF0000, .off = 0x00AE00}, true, "SAF-12: saturated red (read)"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const auto found = flashing(row.flasher).found("flashing");
        EXPECT_EQ(found.size(), row.found ? 1u : 0u);
        for (const Finding& finding : found)
            EXPECT_EQ(finding.severity, Severity::must);
    }
}

TEST(Flashing, LeavesSmallAreasAlone) {
    // SAF-11 (read, derived): at 500 mm 1500 mm2 count; the whole panel has 2488.3, a lamp of 20 x 10 mm 200.
    EXPECT_FALSE(flashing({}).found("flashing").empty());
    EXPECT_TRUE(
        flashing({.box = {.x = 0, .y = 0, .width = 111, .height = 56}}).found("flashing").empty());
    // 1500 / 0.0324 = 46296.3 pixels: 320 x 144 = 46080 pass, 320 x 145 = 46400 fail.
    EXPECT_TRUE(
        flashing({.box = {.x = 0, .y = 0, .width = 320, .height = 144}}).found("flashing").empty());
    EXPECT_FALSE(
        flashing({.box = {.x = 0, .y = 0, .width = 320, .height = 145}}).found("flashing").empty());
}

TEST(Flashing, AddsUpWhatFlashesTogether) {
    Sample s = flashing({.box = {.x = 0, .y = 0, .width = 320, .height = 100}});
    EXPECT_TRUE(s.found("flashing").empty());
    Item second = s.layout.pages[0].items[0];
    second.box.y = 120;
    second.pointer = "/pages/0/items/1";
    s.layout.pages[0].items.push_back(second);
    EXPECT_THAT(sample::only(s.found("flashing")).message, ::testing::HasSubstr("1 other item"));
}

}  // namespace dialplate

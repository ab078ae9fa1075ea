#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A key on a white page, its look in grey as far as a test says so.
struct OnWhite {
    sample::Sample s;
    PaintId enough = 0,
            short_of = 0;  ///< On white: 3.0890:1 and, one code of green lighter, 2.9790:1.
    OnWhite() {
        enough = s.paint("enough", 0);
        s.layout.paints.back().rgb565 = 0x9492;
        short_of = s.paint("short", 0);
        s.layout.paints.back().rgb565 = 0x94B2;  // what 949494 becomes, C565-05
        s.layout.pages[0].ground = s.white;
        s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    }
    Tones& idle() { return s.layout.looks[0].idle; }
    Key& key() { return s.layout.pages[0].items[0].key; }
};

}  // namespace

TEST(KeyOutline, PassesByFillOrByEdge) {
    OnWhite fill;
    fill.idle() = {.ink = fill.s.black, .fill = fill.enough, .edge = fill.s.white};
    EXPECT_TRUE(fill.s.found("key-outline").empty());

    OnWhite edge;
    edge.idle() = {.ink = edge.s.black, .fill = edge.s.white, .edge = edge.enough};
    EXPECT_TRUE(edge.s.found("key-outline").empty());
    edge.key().edge = 0;
    EXPECT_EQ(edge.s.found("key-outline").size(), 1u);
}

TEST(KeyOutline, TellsAKeyThatIsOneCodeShort) {
    OnWhite key;
    key.idle() = {.ink = key.s.black, .fill = key.short_of, .edge = key.s.white};
    const Finding finding = sample::only(key.s.found("key-outline"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_NEAR(*finding.measured, 2.9790, 1e-4);
}

TEST(KeyOutline, LooksAtTheFrameThatTheKeyLiesIn) {
    OnWhite key;
    key.idle() = {.ink = key.s.black, .fill = key.s.white, .edge = key.s.white};
    EXPECT_EQ(key.s.found("key-outline").size(), 1u) << "white on the white page";
    key.s.add_frame({.x = 0, .y = 0, .width = 100, .height = 100}, 1, key.s.black);
    EXPECT_TRUE(key.s.found("key-outline").empty()) << "white on the black frame";
    key.s.layout.pages[0].items[1].box.x = 20;
    EXPECT_EQ(key.s.found("key-outline").size(), 1u) << "the frame is no longer behind it";
}

}  // namespace dialplate

// What the engine sends for changes must leave the glass as a drawing of the whole page would: over random
// values, touches, turns and time, on every example.
#include "sim/prototype/prototype.hpp"
#include "tests/prototype/examples.hpp"

#include <gtest/gtest.h>

#include <random>

namespace dialplate {

namespace {

// Fewer where asserts are on: that is the build with the sanitizers, some thirty times slower.
#ifdef NDEBUG
constexpr int steps = 250;
#else
constexpr int steps = 40;
#endif

class Example : public testing::TestWithParam<std::string> {};

/// One thing that a user, the receiver or time may do.
void anything(Prototype& p, std::mt19937& random) {
    const auto below = [&](int n) { return static_cast<int>(random() % static_cast<unsigned>(n)); };
    const Layout& layout = p.layout();
    switch (below(8)) {
        case 0:
        case 1: {
            if (layout.values.empty()) break;
            const ValueId id = below(static_cast<int>(layout.values.size()));
            const Value& value = layout.values[static_cast<std::size_t>(id)];
            const std::int64_t span = static_cast<std::int64_t>(value.max) - value.min + 1;
            // Ends of the range as often as anything between: carries and blanks live there.
            const int where = below(4);
            const std::int64_t to = where == 0 ? value.min
                                    : where == 1
                                        ? value.max
                                        : value.min + static_cast<std::int64_t>(random()) % span;
            p.set(id, static_cast<std::int32_t>(to));
            break;
        }
        case 2:
            p.turn(below(21) - 10);
            break;
        case 3:
        case 4:
            p.touch(below(layout.glass_width()), below(layout.glass_height()));
            break;
        case 5:
            p.lift();
            break;
        case 6:
            p.pass(below(1500));
            break;
        default:
            if (below(6) == 0) p.show_page(below(static_cast<int>(layout.pages.size())));
            if (below(6) == 0)
                p.use_palette(below(std::max(1, static_cast<int>(layout.palettes.size()))));
            break;
    }
}

std::string first_difference(const std::vector<std::uint16_t>& a,
                             const std::vector<std::uint16_t>& b,
                             int width) {
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (a[i] != b[i]) {
            return "pixel (" + std::to_string(i % static_cast<std::size_t>(width)) + ", " +
                   std::to_string(i / static_cast<std::size_t>(width)) + ")";
        }
    }
    return "none";
}

}  // namespace

TEST_P(Example, ChangesLeaveTheGlassAsAWholeDrawingWould) {
    const LoadedExample loaded = load_example(GetParam());
    ASSERT_FALSE(loaded.image.bytes.empty());
    const int width = loaded.layout.glass_width();
    const std::int64_t whole = static_cast<std::int64_t>(width) * loaded.layout.glass_height();
    for (const unsigned seed : {1U, 2U, 3U}) {
        Prototype p(loaded.layout, loaded.image);
        p.live(seed == 2);
        p.settle();
        std::mt19937 random(seed);
        for (int step = 0; step < steps; ++step) {
            SCOPED_TRACE("seed " + std::to_string(seed) + ", step " + std::to_string(step) +
                         ", page " + std::to_string(p.page()));
            anything(p, random);
            const bool clean_before = !overlaps(loaded.layout, p.page());
            const Update change = p.settle();
            if (!clean_before || overlaps(loaded.layout, p.page())) continue;
            EXPECT_EQ(change.sent.pixels_twice, 0);
            const std::vector<std::uint16_t> after_change = p.glass();
            const Update drawing = p.redraw();
            EXPECT_EQ(drawing.sent.pixels, whole) << "a page covers the glass, each pixel once";
            EXPECT_EQ(drawing.sent.pixels_twice, 0);
            const std::vector<std::uint16_t> whole_page = p.glass();
            ASSERT_EQ(after_change, whole_page)
                << "first at " << first_difference(after_change, whole_page, width);
        }
        EXPECT_EQ(p.counters().bad_windows, 0);
        EXPECT_EQ(p.counters().short_windows, 0);
        EXPECT_EQ(p.counters().stray_parameters, 0);
        EXPECT_EQ(p.counters().unknown_commands, 0);
    }
}

TEST_P(Example, NoSliceIsLongerThanAGlyphOrABandOfFill) {
    const LoadedExample loaded = load_example(GetParam());
    ASSERT_FALSE(loaded.image.bytes.empty());
    std::int64_t longest = 1024;  // the band that the image names
    for (const FaceCost& face : loaded.image.faces) {
        int widest = face.digit_advance;
        for (const Glyph& g : loaded.image.rasters[static_cast<std::size_t>(face.face)].glyphs) {
            widest = std::max(
                widest,
                g.cell.width * loaded.layout.faces[static_cast<std::size_t>(face.face)].scale);
        }
        longest = std::max<std::int64_t>(longest, static_cast<std::int64_t>(widest) * face.height);
    }
    Prototype p(loaded.layout, loaded.image);
    for (int page = 0; page < static_cast<int>(loaded.layout.pages.size()); ++page) {
        p.show_page(page);
        const Update update = p.settle();
        EXPECT_GT(update.slices, 1);
        EXPECT_LE(update.longest_slice_pixels, longest) << "page " << page;
    }
}

TEST_P(Example, TheSameInputGivesTheSameBytes) {
    const LoadedExample loaded = load_example(GetParam());
    ASSERT_FALSE(loaded.image.bytes.empty());
    Prototype a(loaded.layout, loaded.image), b(loaded.layout, loaded.image);
    std::mt19937 for_a(7), for_b(7);
    for (int step = 0; step < 60; ++step) {
        anything(a, for_a);
        anything(b, for_b);
        ASSERT_EQ(a.pass(30).sent, b.pass(30).sent);
    }
    EXPECT_EQ(a.glass(), b.glass());
    EXPECT_EQ(build_image(loaded.layout).image->bytes, loaded.image.bytes);
}

INSTANTIATE_TEST_SUITE_P(Every, Example, testing::ValuesIn(example_files()), test_name);

}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// Behind an opening that hides 2 pixels on every side, 2 mm deep: a finger of 10 mm comes as near as 4 mm,
/// so that the middle of a key has to be 4.36 mm, 24.22 px, from the edge of the glass.
sample::Sample behind_panel(const Box& box) {
    sample::Sample s;
    s.layout.opening = Opening{.left = Millimetres{0.36},
                               .top = Millimetres{0.36},
                               .width = Millimetres{316 * 0.18},
                               .height = Millimetres{236 * 0.18},
                               .depth = Millimetres{2.0},
                               .overlap = Millimetres{3.0}};
    s.add_key(box);
    return s;
}

}  // namespace

TEST(TouchReach, TellsAKeyWhoseMiddleIsOnePixelTooNear) {
    struct Row {
        Box box;
        const char* cure;
        const char* words;
    };
    const Row rows[] = {
        {{5, 100, 40, 40}, "", "the middle is at 25 px"},
        {{4, 100, 40, 40}, "[5, 100]", "move it 1 px to the right"},
        {{100, 4, 40, 40}, "[100, 5]", "move it 1 px down"},
        {{275, 100, 40, 40}, "", "the middle is 25 px from the edge"},
        {{276, 100, 40, 40}, "[275, 100]", "move it 1 px to the left"},
        {{100, 197, 40, 40}, "[100, 195]", "move it 2 px up"},
        {{4, 4, 40, 40}, "[5, 5]", "move it 1 px to the right and 1 px down"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.words);
        const auto found = behind_panel(row.box).found("touch-reach");
        if (*row.cure == '\0') {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, Severity::should);
        EXPECT_NEAR(*finding.required, 4.0, 1e-12);
        EXPECT_THAT(finding.message, ::testing::HasSubstr(row.words));
        ASSERT_EQ(finding.cure.size(), 1u);
        EXPECT_EQ(finding.cure[0].pointer, "/pages/0/items/0/at");
        EXPECT_EQ(finding.cure[0].value, row.cure);
    }
}

TEST(TouchReach, AsksForNothingBesideAFlatPanelOrNone) {
    sample::Sample s = behind_panel({.x = 2, .y = 100, .width = 40, .height = 40});
    s.layout.opening->depth = Millimetres{0.0};
    EXPECT_TRUE(s.found("touch-reach").empty());
    s.layout.opening.reset();
    EXPECT_TRUE(s.found("touch-reach").empty());
}

}  // namespace dialplate

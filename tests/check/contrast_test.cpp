#include "sim/check/contrast.hpp"

#include "sim/check/nearest_ink.hpp"

#include <gtest/gtest.h>

namespace dialplate {

TEST(Contrast, AgreesWithThePublishedPairs) {
    struct Row {
        std::uint32_t one, other;
        double ratio;
    };
    // CON-T1 of the table of published figures.
    const Row rows[] = {
        {0xFFFFFF, 0x000000, 21.0000}, {0xFF0000, 0x000000, 5.2520},  {0x777777, 0xFFFFFF, 4.4781},
        {0x00FF00, 0x000000, 15.3040}, {0x767676, 0xFFFFFF, 4.5422},  {0x0000FF, 0x000000, 2.4440},
        {0x757575, 0xFFFFFF, 4.6075},  {0xFFFF00, 0x000000, 19.5560}, {0x949494, 0xFFFFFF, 3.0335},
        {0x00FFFF, 0x000000, 16.7480}, {0x959595, 0xFFFFFF, 2.9954},  {0xFF00FF, 0x000000, 6.6960},
        {0x595959, 0xFFFFFF, 7.0047},  {0xFFA500, 0x000000, 10.6341}, {0x5A5A5A, 0xFFFFFF, 6.8969},
        {0xFFBF00, 0x000000, 12.7043}, {0x808080, 0xFFFFFF, 3.9494},  {0xFFFF00, 0x0000FF, 8.0016},
        {0x808080, 0x000000, 5.3172},  {0xFF0000, 0x0000FF, 2.1489},  {0xFF0000, 0xFFFFFF, 3.9985},
        {0x0000FF, 0xFFFFFF, 8.5925},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(::testing::Message() << std::hex << row.one << "/" << row.other);
        const double one = relative_luminance(row.one), other = relative_luminance(row.other);
        EXPECT_NEAR(contrast_ratio(one, other), row.ratio, 1e-4);
        EXPECT_DOUBLE_EQ(contrast_ratio(one, other), contrast_ratio(other, one));
    }
}

TEST(Contrast, IsJudgedOnTheColourThatTheDisplayHolds) {
    struct Row {
        std::uint32_t typed;
        double as_typed, as_held, pass_mark;
        bool passes_as_typed, passes_as_held;
    };
    // C565-05, all on white: quantisation changes the verdict.
    const Row rows[] = {
        {0x777777, 4.4781, 4.6449, 4.5, false, true},
        {0x949494, 3.0335, 2.9790, 3.0, true, false},
        {0x595959, 7.0047, 6.9737, 7.0, true, false},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(::testing::Message() << std::hex << row.typed);
        const double typed =
            contrast_ratio(relative_luminance(row.typed), relative_luminance(0xFFFFFF));
        const double held = contrast_on_glass(pack_rgb565(row.typed), pack_rgb565(0xFFFFFF));
        EXPECT_NEAR(typed, row.as_typed, 1e-4);
        EXPECT_NEAR(held, row.as_held, 1e-4);
        EXPECT_EQ(typed >= row.pass_mark, row.passes_as_typed);
        EXPECT_EQ(held >= row.pass_mark, row.passes_as_held);
    }
}

TEST(Contrast, OffersAnInkThatReachesThePassMark) {
    // Any two colours on any ground: what is offered holds what it promises, on the glass.
    for (const std::uint32_t ground : {0x000000u, 0x203040u, 0x777777u, 0xF2EFE6u, 0xFFFFFFu}) {
        for (const std::uint32_t ink : {0x000000u, 0x802020u, 0x777777u, 0x40C0FFu, 0xFFFFFFu}) {
            const std::uint16_t held = pack_rgb565(ground);
            const auto offered =
                ink_that_reaches({.ink = pack_rgb565(ink), .ground = held, .ratio = 4.5});
            ASSERT_TRUE(offered) << std::hex << ink << " on " << ground;
            EXPECT_GE(contrast_on_glass(pack_rgb565(*offered), held), 4.5);
        }
    }
}

TEST(Contrast, OffersNoInkWhereNoneReaches) {
    // 777777 as held has 4.64:1 to white and 4.52:1 to black (C565-05 and CON-04): 7:1 is out of reach.
    EXPECT_FALSE(ink_that_reaches({.ink = 0xFFFF, .ground = pack_rgb565(0x777777), .ratio = 7.0}));
}

}  // namespace dialplate

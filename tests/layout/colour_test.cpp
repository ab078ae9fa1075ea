#include "sim/layout/colour.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <set>

namespace dialplate {
namespace {

TEST(Colour, PacksToTheWordsOfTheStandard) {
    struct Row {
        std::uint32_t rgb888;
        std::uint16_t rgb565;
        const char* source;
    };
    const Row rows[] = {
        {0xFF0000, 0xF800, "C565-01: red in bits 11-15"},
        {0x00FF00, 0x07E0, "C565-01: green in bits 5-10"},
        {0x0000FF, 0x001F, "C565-01: blue in bits 0-4"},
        {0x808080, 0x8410, "C565-01: middle grey"},
        {0xFFA500, 0xFD20, "C565-01: orange, bytes FD 20 on the wire"},
        {0x777777, 0x73AE, "C565-05"},
        {0x949494, 0x94B2, "C565-05"},
        {0x595959, 0x5ACB, "C565-05"},
        {0x000000, 0x0000, "nothing stays nothing"},
        {0xFFFFFF, 0xFFFF, "full stays full"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(pack_rgb565(row.rgb888), row.rgb565);
    }
}

TEST(Colour, ExpandsByRepeatingHighBits) {
    struct Row {
        std::uint16_t rgb565;
        std::uint32_t rgb888;
        const char* source;
    };
    const Row rows[] = {
        {0x0000, 0x000000, "C565-02: 0 -> 0"},
        {0xFFFF, 0xFFFFFF, "C565-02: 31 -> 255, 63 -> 255"},
        {16 << 11, 132 << 16, "C565-02: red 16 -> 132"},
        {32 << 5, 130 << 8, "C565-02: green 32 -> 130"},
        {16, 132, "C565-02: blue 16 -> 132"},
        {0x73AE, 0x737573, "C565-05"},
        {0x94B2, 0x949694, "C565-05"},
        {0x5ACB, 0x5A595A, "C565-05"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(expand_rgb565(row.rgb565), row.rgb888);
    }
}

// C565-03: the other common way to expand, by rounding, differs by exactly 1 at these and nowhere else.
TEST(Colour, DiffersFromExpansionByRoundingOnlyWhereTheStandardSays) {
    const std::set<int> five_bits = {3, 7, 24, 28};
    for (int v = 0; v < 32; ++v) {
        const int rounded = static_cast<int>(std::lround(v * 255.0 / 31.0));
        const int red = static_cast<int>(expand_rgb565(static_cast<std::uint16_t>(v << 11)) >> 16);
        const int blue = static_cast<int>(expand_rgb565(static_cast<std::uint16_t>(v)));
        EXPECT_EQ(std::abs(red - rounded), five_bits.contains(v) ? 1 : 0) << v;
        EXPECT_EQ(red, blue) << v;
    }
    const std::set<int> six_bits = {11, 12, 13, 14, 15, 48, 49, 50, 51, 52};
    for (int v = 0; v < 64; ++v) {
        const int rounded = static_cast<int>(std::lround(v * 255.0 / 63.0));
        const int green = static_cast<int>(expand_rgb565(static_cast<std::uint16_t>(v << 5)) >> 8);
        EXPECT_EQ(std::abs(green - rounded), six_bits.contains(v) ? 1 : 0) << v;
    }
}

TEST(Colour, ComesBackFromEveryWord) {  // C565-04
    for (std::uint32_t word = 0; word <= 0xFFFF; ++word) {
        const auto w = static_cast<std::uint16_t>(word);
        ASSERT_EQ(pack_rgb565(expand_rgb565(w)), w);
    }
}

TEST(Colour, TintsGreysThatTheTwoExpansionsSeeDifferently) {  // C565-06
    for (const std::uint32_t grey : {0x757575u, 0x767676u, 0x777777u}) {
        EXPECT_EQ(expand_rgb565(pack_rgb565(grey)), 0x737573u);
    }
}

}  // namespace
}  // namespace dialplate

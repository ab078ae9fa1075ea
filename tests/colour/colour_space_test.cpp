#include "sim/colour/colour_space.hpp"

#include "sim/colour/vision.hpp"

#include <gtest/gtest.h>

#include <cstdint>

namespace dialplate {

TEST(ColourSpace, MeetsThePublishedPairsOfCiede2000) {
    struct Row {
        Lab first, second;
        double difference;
    };
    // Sharma, Wu, Dalal 2005, Table 1, all 34 pairs (read, second-hand). Pairs 10 and 14 stand exactly where
    // opposite hues make the formula jump: with this order of operations they come out as printed.
    // clang-format off
    const Row rows[] = {
        {{50, 2.6772, -79.7751}, {50, 0, -82.7485}, 2.0425},
        {{50, 3.1571, -77.2803}, {50, 0, -82.7485}, 2.8615},
        {{50, 2.8361, -74.0200}, {50, 0, -82.7485}, 3.4412},
        {{50, -1.3802, -84.2814}, {50, 0, -82.7485}, 1.0000},
        {{50, -1.1848, -84.8006}, {50, 0, -82.7485}, 1.0000},
        {{50, -0.9009, -85.5211}, {50, 0, -82.7485}, 1.0000},
        {{50, 0, 0}, {50, -1, 2}, 2.3669},
        {{50, -1, 2}, {50, 0, 0}, 2.3669},
        {{50, 2.49, -0.001}, {50, -2.49, 0.0009}, 7.1792},
        {{50, 2.49, -0.001}, {50, -2.49, 0.0010}, 7.1792},
        {{50, 2.49, -0.001}, {50, -2.49, 0.0011}, 7.2195},
        {{50, 2.49, -0.001}, {50, -2.49, 0.0012}, 7.2195},
        {{50, -0.001, 2.49}, {50, 0.0009, -2.49}, 4.8045},
        {{50, -0.001, 2.49}, {50, 0.0010, -2.49}, 4.8045},
        {{50, -0.001, 2.49}, {50, 0.0011, -2.49}, 4.7461},
        {{50, 2.5, 0}, {50, 0, -2.5}, 4.3065},
        {{50, 2.5, 0}, {73, 25, -18}, 27.1492},
        {{50, 2.5, 0}, {61, -5, 29}, 22.8977},
        {{50, 2.5, 0}, {56, -27, -3}, 31.9030},
        {{50, 2.5, 0}, {58, 24, 15}, 19.4535},
        {{50, 2.5, 0}, {50, 3.1736, 0.5854}, 1.0000},
        {{50, 2.5, 0}, {50, 3.2972, 0}, 1.0000},
        {{50, 2.5, 0}, {50, 1.8634, 0.5757}, 1.0000},
        {{50, 2.5, 0}, {50, 3.2592, 0.3350}, 1.0000},
        {{60.2574, -34.0099, 36.2677}, {60.4626, -34.1751, 39.4387}, 1.2644},
        {{63.0109, -31.0961, -5.8663}, {62.8187, -29.7946, -4.0864}, 1.2630},
        {{61.2901, 3.7196, -5.3901}, {61.4292, 2.2480, -4.9620}, 1.8731},
        {{35.0831, -44.1164, 3.7933}, {35.0232, -40.0716, 1.5901}, 1.8645},
        {{22.7233, 20.0904, -46.6940}, {23.0331, 14.9730, -42.5619}, 2.0373},
        {{36.4612, 47.8580, 18.3852}, {36.2715, 50.5065, 21.2231}, 1.4146},
        {{90.8027, -2.0831, 1.4410}, {91.1528, -1.6435, 0.0447}, 1.4441},
        {{90.9257, -0.5406, -0.9208}, {88.6381, -0.8985, -0.7239}, 1.5381},
        {{6.7747, -0.2908, -2.4247}, {5.8714, -0.0985, -2.2286}, 0.6377},
        {{2.0776, 0.0795, -1.1350}, {0.9033, -0.0636, -0.5514}, 0.9082},
    };
    // clang-format on
    int pair = 0;
    for (const Row& row : rows) {
        SCOPED_TRACE("pair " + std::to_string(++pair));
        EXPECT_NEAR(ciede2000(row.first, row.second), row.difference, 1e-4);
        EXPECT_NEAR(ciede2000(row.second, row.first), row.difference, 1e-4);
    }
    EXPECT_EQ(pair, 34);
}

TEST(ColourSpace, TellsRedFromGreenAsFarAsEachEyeDoes) {
    // CVD-07 (derived by an independent script): D65, 2 degrees, on colours of 8 bits.
    const auto difference = [](std::uint32_t red, std::uint32_t green) {
        return ciede2000(lab(light_of(red)), lab(light_of(green)));
    };
    EXPECT_NEAR(difference(0xFF0000, 0x00FF00), 86.608, 0.05);
    struct Row {
        Vision vision;
        double difference;
    };
    for (const Row& row :
         {Row{Vision::protan, 42.356}, Row{Vision::deutan, 19.514}, Row{Vision::tritan, 75.604}}) {
        SCOPED_TRACE(name_of(row.vision));
        const std::uint32_t red = code_of(seen_with(row.vision, light_of(0xFF0000)));
        const std::uint32_t green = code_of(seen_with(row.vision, light_of(0x00FF00)));
        EXPECT_NEAR(difference(red, green), row.difference, 0.05);
    }
}

TEST(ColourSpace, FindsNoColourInGreys) {
    for (std::uint32_t grey = 0; grey < 256; ++grey) {
        const Lab made = lab(light_of(grey * 0x010101u));
        // The matrix has seven figures: what is left of a colour is far below what can be seen.
        EXPECT_NEAR(made.a, 0.0, 0.02);
        EXPECT_NEAR(made.b, 0.0, 0.02);
    }
    EXPECT_NEAR(lab(light_of(0xFFFFFF)).l, 100.0, 1e-4);
}

TEST(ColourSpace, KnowsTheChromaticityOfThePrimariesOfSrgb) {
    // IEC 61966-2-1 gives x, y of the primaries: red 0.64, 0.33; green 0.30, 0.60; blue 0.15, 0.06; D65
    // 0.3127, 0.3290 (from memory). u' = 4x / (-2x + 12y + 3), v' = 9y / (-2x + 12y + 3).
    struct Row {
        std::uint32_t colour;
        double u, v;
    };
    const Row rows[] = {
        {0xFF0000, 2.56 / 5.68, 2.97 / 5.68},
        {0x00FF00, 1.20 / 9.60, 5.40 / 9.60},
        {0x0000FF, 0.60 / 3.42, 0.54 / 3.42},
        {0xFFFFFF, 1.2508 / 6.3226, 2.961 / 6.3226},
    };
    for (const Row& row : rows) {
        const Chromaticity found = chromaticity(light_of(row.colour));
        EXPECT_NEAR(found.u, row.u, 2e-4);
        EXPECT_NEAR(found.v, row.v, 2e-4);
    }
    const Chromaticity black = chromaticity(light_of(0x000000));
    EXPECT_NEAR(apart(black, chromaticity(light_of(0x808080))), 0.0, 1e-4);
}

}  // namespace dialplate

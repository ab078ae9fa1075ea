#include "ui/touch_reading.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace dialplate {
namespace {

TEST(TouchReading, LeavesASpikeOut) {
    // Standards RES-10: the mean of all five would be 1228.2, the median is 512.
    std::uint16_t samples[touch_samples] = {512, 511, 4095, 513, 510};
    EXPECT_EQ(middle_of(samples), 512);
}

TEST(TouchReading, IsTheMeanOfTheMiddleThreeInEveryOrder) {
    std::uint16_t order[touch_samples] = {0, 7, 100, 4000, 4095};
    do {
        std::uint16_t samples[touch_samples];
        std::copy(std::begin(order), std::end(order), std::begin(samples));
        EXPECT_EQ(middle_of(samples), 1369);  // (7 + 100 + 4000) / 3 = 1369
    } while (std::next_permutation(std::begin(order), std::end(order)));
}

TEST(TouchReading, MeasuresTheContactAsTheDataSheetFormulaDoes) {
    struct Row {
        std::uint16_t plate;
        PressReading press;
        double ohm;
        const char* source;
    };
    const Row rows[] = {
        {400, {2048, 600, 1200}, 200.0, "RES-02, first value"},
        {300, {1000, 900, 1800}, 73.2422, "RES-02, second value"},
        {400,
         {2048, 600, 1100},
         166.667,
         "the same formula where an integer quotient would give 0"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_NEAR(touch_ohm(row.press, row.plate, 12), row.ohm, 1.0);
    }
}

TEST(TouchReading, StaysWithinAnOhmOfTheFormulaOverTheWholeRange) {
    int compared = 0;
    for (unsigned plate : {200u, 400u, 900u, 2047u}) {
        for (unsigned bits : {10u, 12u}) {
            const unsigned full = (1u << bits) - 1;
            const unsigned step = full / 45;
            for (unsigned x = 0; x <= full; x += step) {
                for (unsigned z1 = 1; z1 <= full; z1 += step) {
                    for (unsigned z2 = z1; z2 <= full; z2 += step) {
                        const PressReading press{static_cast<std::uint16_t>(x),
                                                 static_cast<std::uint16_t>(z1),
                                                 static_cast<std::uint16_t>(z2)};
                        const double ohm = plate * (x / static_cast<double>(full + 1)) *
                                           (z2 / static_cast<double>(z1) - 1.0);
                        const std::uint16_t got = touch_ohm(press,
                                                            static_cast<std::uint16_t>(plate),
                                                            static_cast<std::uint8_t>(bits));
                        if (ohm < 65534.0 && got != no_touch_ohm) {
                            // The quotient loses less than one count, worth plate / 2^bits ohms.
                            ASSERT_NEAR(got, ohm, 0.51 + plate / static_cast<double>(full + 1));
                            ++compared;
                        } else {
                            ASSERT_GE(ohm, 65532.0);
                        }
                    }
                }
            }
        }
    }
    EXPECT_GT(compared, 100000);
}

TEST(TouchReading, CallsNoContactNone) {
    EXPECT_EQ(touch_ohm({2048, 0, 4095}, 400, 12), no_touch_ohm);
    EXPECT_EQ(touch_ohm({4095, 1, 4095}, 2047, 12), no_touch_ohm);
    EXPECT_EQ(touch_ohm({2048, 600, 599}, 400, 12), 0) << "noise on a firm press";
}

}  // namespace
}  // namespace dialplate

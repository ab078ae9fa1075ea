#include "sim/check/supply_limits.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

Sample running(double clock_mhz, std::optional<double> supply_v) {
    Sample s;
    s.layout.mcu.clock_max = Hertz{20e6};
    s.layout.clock = Hertz{clock_mhz * 1e6};
    s.layout.wiring.supply_v = supply_v;
    return s;
}

}  // namespace

TEST(McuClock, FollowsTheSpeedGrades) {
    struct Row {
        double clock_mhz;
        std::optional<double> supply_v;
        std::optional<Severity> found;
        const char* source;
    };
    const Row rows[] = {
        {16, 3.3, Severity::should, "MCU-09: 16 MHz at 3.3 V is out of data sheet (memory)"},
        {8, 3.3, {}, "MCU-09: 8 MHz does (memory)"},
        {13.33, 3.3, {}, "MCU-09: 13.33 MHz just passes"},
        {13.34, 3.3, Severity::should, "one step faster"},
        {20, 4.5, {}, "MCU-09: 20 MHz at 4.5 V"},
        {20, 4.49, Severity::should, "one step less"},
        {10, 2.7, {}, "MCU-09: 10 MHz at 2.7 V"},
        {16, {}, {}, "nothing is said of the supply"},
        {20.01, 5.0, Severity::must, "the greatest clock of the part"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const auto found = running(row.clock_mhz, row.supply_v).found("mcu-clock");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (row.found) {
            EXPECT_EQ(found[0].severity, *row.found);
        }
    }
}

TEST(McuClock, SaysWhichSupplyWouldDo) {
    EXPECT_THAT(sample::only(running(16, 3.3).found("mcu-clock")).message,
                ::testing::HasSubstr("3.78 V or a slower clock"));
}

TEST(McuClock, KnowsNoSpeedGradesOfOtherParts) {
    Sample s = running(16, 3.3);
    s.layout.mcu.name = "STM32F103C8";
    EXPECT_TRUE(s.found("mcu-clock").empty());
}

TEST(McuClock, InvertsItsSpeedGrades) {
    Mcu mcu;
    mcu.name = "ATmega328P";
    for (const double volts : {1.8, 2.0, 2.7, 3.3, 4.5})
        EXPECT_NEAR(least_supply(mcu, *safe_clock(mcu, volts)).value_or(0.0), volts, 1e-9);
}

}  // namespace dialplate

#include "sim/check/supply_limits.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

// As layouts/parts/mcus.json has them.
const std::vector<SpeedGrade> grades_of_328p = {
    {1.8, Hertz{4e6}}, {2.7, Hertz{10e6}}, {4.5, Hertz{20e6}}};
const std::vector<SpeedGrade> grades_of_2560 = {{2.7, Hertz{8e6}}, {4.5, Hertz{16e6}}};
const std::vector<SpeedGrade> grades_of_4809 = {
    {1.8, Hertz{5e6}}, {2.7, Hertz{10e6}}, {4.5, Hertz{20e6}}};
const std::vector<SpeedGrade> grades_of_esp32 = {{2.3, Hertz{240e6}}};

Sample running(double clock_mhz,
               std::optional<double> supply_v,
               const std::vector<SpeedGrade>& grades = grades_of_328p) {
    Sample s;
    s.layout.mcu.clock_max = Hertz{240e6};
    if (&grades == &grades_of_328p) s.layout.mcu.clock_max = Hertz{20e6};
    s.layout.mcu.speed_grades = grades;
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

TEST(McuClock, FollowsTheSpeedGradesOfOtherParts) {
    struct Row {
        const std::vector<SpeedGrade>& grades;
        double clock_mhz, supply_v;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {grades_of_2560, 16, 4.5, false, "ATmega2560: 16 MHz from 4.5 V (memory)"},
        {grades_of_2560, 16, 4.49, true, "one step less"},
        // 8 + (3.3 - 2.7) * 8 / 1.8 = 10.667 MHz
        {grades_of_2560, 10.66, 3.3, false, "straight between 2.7 and 4.5 V (memory)"},
        {grades_of_2560, 10.67, 3.3, true, "one step faster"},
        {grades_of_2560, 1, 2.69, true, "below the least supply"},
        {grades_of_4809, 10, 2.7, false, "ATmega4809: 10 MHz from 2.7 V (memory)"},
        {grades_of_4809, 10.01, 2.7, true, "one step faster"},
        {grades_of_esp32, 240, 2.3, false, "ESP32: from 2.3 V (read, second-hand)"},
        {grades_of_esp32, 240, 2.29, true, "one step less"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(running(row.clock_mhz, row.supply_v, row.grades).found("mcu-clock").size(),
                  row.found ? 1u : 0u);
    }
}

TEST(McuClock, SaysThatAPartRunsFromItsLeastSupplyOnly) {
    EXPECT_THAT(sample::only(running(8, 1.5).found("mcu-clock")).message,
                ::testing::HasSubstr("it runs from 1.80 V only: 2.40 V reach it"));
}

TEST(McuClock, SaysWhereSpeedGradesAreNotKnown) {
    const Finding finding = sample::only(running(16, 3.3, {}).found("mcu-clock"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("no speed grades"));
    EXPECT_TRUE(running(16, std::nullopt, {}).found("mcu-clock").empty());
}

TEST(McuClock, InvertsItsSpeedGrades) {
    Mcu mcu;
    for (const auto& grades : {grades_of_328p, grades_of_4809}) {
        mcu.speed_grades = grades;
        for (const double volts : {1.8, 2.0, 2.7, 3.3, 4.5})
            EXPECT_NEAR(least_supply(mcu, *safe_clock(mcu, volts)).value_or(0.0), volts, 1e-9);
    }
    EXPECT_FALSE(least_supply(mcu, Hertz{20.1e6}).has_value());
}

}  // namespace dialplate

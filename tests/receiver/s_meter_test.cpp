#include "sim/receiver/s_meter.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {
namespace {

constexpr Hertz forty_metres{7.1e6};

TEST(SMeter, MeetsThePublishedTable) {
    struct Row {
        double units, over_db, dbm, microvolts;
        const char* text;
    };
    // standards, section 8, "S table", from RX-01..05 (IARU Region 1 R.1).
    const Row rows[] = {
        {1, 0, -121, 0.1993, "S1"},
        {2, 0, -115, 0.3976, "S2"},
        {3, 0, -109, 0.7934, "S3"},
        {4, 0, -103, 1.5830, "S4"},
        {5, 0, -97, 3.1585, "S5"},
        {6, 0, -91, 6.3021, "S6"},
        {7, 0, -85, 12.5743, "S7"},
        {8, 0, -79, 25.0891, "S8"},
        {9, 0, -73, 50.0593, "S9"},
        {9, 10, -63, 158.3015, "S9+10"},
        {9, 20, -53, 500.5933, "S9+20"},
        {9, 30, -43, 1583.0149, "S9+30"},
        {9, 40, -33, 5005.9326, "S9+40"},
        {9, 60, -13, 50059.3265, "S9+60"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.text);
        const DecibelMilliwatts power{row.dbm};
        const SReading reading = s_reading(power, forty_metres);
        EXPECT_NEAR(reading.units, row.units, 1e-9);
        EXPECT_NEAR(reading.over_db, row.over_db, 1e-9);
        EXPECT_EQ(s_text(reading), row.text);
        EXPECT_NEAR(power_of(reading, forty_metres).value, row.dbm, 1e-9);
        EXPECT_NEAR(voltage_of(power).value, row.microvolts, 0.0005);
        // The table's voltages are rounded to 0.00005 uV, 0.0022 dB at the least of them.
        EXPECT_NEAR(power_of(Microvolts{row.microvolts}).value, row.dbm, 0.0025);
    }
}

TEST(SMeter, ReadsFractionsAndStopsBelowS0) {
    struct Row {
        double dbm, units, over_db;
        const char* source;
    };
    const Row rows[] = {
        {-100, 4.5, 0, "standards RX-06"},
        {-53, 9, 20, "standards RX-06"},
        {-130, 0, 0, "standards RX-06"},
        {-93, 5.67, 0, "standards RX-09: -73 dBm behind a 20 dB pad"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const SReading reading = s_reading(DecibelMilliwatts{row.dbm}, forty_metres);
        EXPECT_NEAR(reading.units, row.units, 0.005);
        EXPECT_NEAR(reading.over_db, row.over_db, 1e-9);
    }
}

TEST(SMeter, PutsS9LowerAbove30MHz) {
    EXPECT_EQ(s9_level(Hertz{29.7e6}).value, -73.0);  // standards RX-01
    EXPECT_EQ(s9_level(Hertz{50e6}).value, -93.0);    // standards RX-02
    EXPECT_EQ(s_text(s_reading(DecibelMilliwatts{-73.0}, Hertz{145e6})), "S9+20");
}

TEST(SMeter, NamesTheUnitThatIsReached) {
    const auto text = [](double dbm) {
        return s_text(s_reading(DecibelMilliwatts{dbm}, forty_metres));
    };
    EXPECT_EQ(text(-73.5), "S8");
    EXPECT_EQ(text(-72.6), "S9") << "less than half a decibel over";
    EXPECT_EQ(text(-72.4), "S9+1");
    EXPECT_EQ(text(-140.0), "S0");
}

TEST(SMeter, ConvertsPowerAndVoltage) {
    struct Row {
        double microvolts, dbm;
    };
    // standards RX-05, 1e-3 relative.
    const Row rows[] = {{50.0, -73.0103}, {1.0, -106.9897}, {50059.3, -13.0}};
    for (const Row& row : rows) {
        EXPECT_NEAR(power_of(Microvolts{row.microvolts}).value, row.dbm, 1e-3);
        EXPECT_NEAR(
            voltage_of(DecibelMilliwatts{row.dbm}).value, row.microvolts, 1e-3 * row.microvolts);
    }
}

TEST(SMeter, KnowsTheNoiseFloor) {
    struct Row {
        double hertz, dbm;
    };
    // standards RX-07, printed to two decimals.
    const Row rows[] = {{500, -147.01}, {2400, -140.20}, {6000, -136.22}};
    for (const Row& row : rows)
        EXPECT_NEAR(noise_floor(Hertz{row.hertz}).value, row.dbm, 0.005);
}

}  // namespace
}  // namespace dialplate

#include "sim/receiver/read_out.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

TEST(ReadOut, GroupsTheFrequencyInThrees) {
    struct Row {
        std::int64_t hertz;
        ReadOutForm form;
        const char* expected;
        const char* source;
    };
    const ReadOutForm to_hertz{.groups = {2, 3, 3}, .separator = ".", .drop = 0, .least = 7};
    const ReadOutForm to_tens{.groups = {2, 3, 2}, .separator = ".", .drop = 1, .least = 6};
    const Row rows[] = {
        {7'100'000, to_hertz, " 7.100.000", "standards RX-15"},
        {29'700'000, to_hertz, "29.700.000", "standards RX-15"},
        {530'000, to_hertz, " 0.530.000", "standards RX-15, with the leading 0 kept"},
        {14'195'000, to_hertz, "14.195.000", "standards RX-15"},
        {14'195'000, to_tens, "14.195.00", "standards RX-15, to 10 Hz"},
        {14'195'019, to_tens, "14.195.01", "digits are cut, not rounded: a dial never runs ahead"},
        {530'000,
         {.groups = {2, 3, 3}, .separator = ".", .drop = 0, .least = 1},
         "   530.000",
         "separators go with the digits"},
        {0,
         {.groups = {2, 3, 3}, .separator = ".", .drop = 0, .least = 1},
         "         0",
         "one digit"},
        {1602,
         {.groups = {4}, .separator = "", .drop = 0, .least = 3},
         "1602",
         "medium wave in kHz"},
        {531,
         {.groups = {4}, .separator = "", .drop = 0, .least = 3},
         " 531",
         "medium wave in kHz"},
        {123'456'789, to_hertz, "23.456.789", "too wide: the left is lost"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(read_out(row.hertz, row.form), row.expected);
    }
}

TEST(Tuning, StepsToMultiplesExactlyInWholeHertz) {
    struct Row {
        std::int64_t from, step, detents, to;
        const char* why;
    };
    const Row rows[] = {
        {7'100'000, 10, 1, 7'100'010, "on the raster"},
        {7'100'000, 10, -3, 7'099'970, "on the raster, down"},
        {7'123'456, 1000, 1, 7'124'000, "off the raster: to the next multiple"},
        {7'123'456, 1000, -1, 7'123'000, "off the raster: to the last multiple"},
        {7'123'456, 1000, 3, 7'126'000, "then by whole steps"},
        {7'123'456, 1000, -3, 7'121'000, "then by whole steps, down"},
        {7'123'456, 1, 5, 7'123'461, "hertz by hertz"},
        {531'000, 9000, 1, 540'000, "standards RX-14: 9 kHz, medium wave"},
        {5'000, 9000, -1, 0, "the multiple below may be 0"},
        {-5, 10, 1, 0, "below zero, for offsets"},
        {-5, 10, -1, -10, "below zero, for offsets"},
        {-20, 10, -1, -30, "below zero, on the raster"},
        {7'100'000, 10, 0, 7'100'000, "no detent"},
        {2'147'483'000, 1'000'000, 1'000'000, 1'002'147'000'000, "no overflow"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        EXPECT_EQ(tuned(row.from, row.step, row.detents), row.to);
    }
}

TEST(Tuning, ReturnsToWhereItWasOnTheRaster) {
    for (const std::int64_t step : {1, 10, 100, 1000, 5000, 9000, 10'000, 100'000}) {  // RX-14
        std::int64_t frequency = 900'000;
        for (int i = 0; i < 50; ++i)
            frequency = tuned(frequency, step, 1);
        EXPECT_EQ(frequency, 900'000 + 50 * step);
        for (int i = 0; i < 50; ++i)
            frequency = tuned(frequency, step, -1);
        EXPECT_EQ(frequency, 900'000);
    }
}

TEST(Tuning, MarksTheDigitThatAStepChanges) {
    const std::pair<std::int64_t, int> rows[] = {
        {1, 0}, {9, 0}, {10, 1}, {100, 2}, {999, 2}, {1000, 3}, {5000, 3}, {9000, 3}, {100'000, 5}};
    for (const auto& [step, place] : rows)
        EXPECT_EQ(tuning_place(step), place) << step;
}

}  // namespace
}  // namespace dialplate

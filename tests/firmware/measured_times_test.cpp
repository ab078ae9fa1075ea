// The table that the ledger predicts drawing times from, held against the engine as it is now, on the simulated
// chip, by layouts that no fit has seen.
#include "sim/ledger/measured_times.hpp"

#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/draw_time.hpp"
#include "tests/firmware/timed_layouts.hpp"
#include "tests/firmware/timed_run.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace dialplate {
namespace {

constexpr std::uint32_t unseen = 5010;  // measure_times makes up layouts from 0 on

struct Timed {
    Layout layout;
    TimedRun run;
};

Timed run_unseen(std::uint32_t seed, const TimedDriver& driver) {
    const Reading reading =
        read_layout(timed_layout(seed), "unseen.json", DIALPLATE_TREE "/layouts");
    const Building building = build_image(reading.layout.value());
    Timed timed{*reading.layout, {}};
    timed.layout.bus.kind = driver.kind;
    timed.layout.display.bytes_per_pixel = driver.bytes_per_pixel;
    timed.run = timed_run(timed.layout, building.image.value(), driver, 1, DIALPLATE_TREE);
    return timed;
}

/// How far each prediction is off, as a part of what was measured; sorted.
std::vector<double> errors_of(const Timed& timed) {
    const ServiceTime time(timed.layout, timed.run.parts);
    std::vector<double> errors;
    for (const TimedUpdate& update : timed.run.updates) {
        double measured = 0.0;
        double predicted = 0.0;
        for (const TimedService& service : update.services) {
            measured += service.cycles;
            predicted += time.cycles(service.work);
        }
        errors.push_back(std::abs(predicted - measured) / measured);
    }
    std::sort(errors.begin(), errors.end());
    return errors;
}

class MeasuredTimes : public testing::TestWithParam<TimedDriver> {};

TEST_P(MeasuredTimes, AgreeWithTheEngineDrawingAnUnseenLayout) {
    const Timed timed =
        run_unseen(unseen + static_cast<std::uint32_t>(GetParam().kind), GetParam());
    ASSERT_EQ(timed.run.trouble, "");
    const std::vector<double> errors = errors_of(timed);
    ASSERT_GE(errors.size(), 3U);
    const auto* driver = std::find_if(
        std::begin(measured::driver_time), std::end(measured::driver_time), [](const auto& d) {
            return d.kind == GetParam().kind && d.bytes_per_pixel == GetParam().bytes_per_pixel;
        });
    // One layout's updates are alike: all of them may be among the tenth that is off by more.
    EXPECT_LE(errors[errors.size() / 2], driver->nine_of_ten_error)
        << "the engine has changed: build the target measure";
    EXPECT_LE(errors.back(), 1.5 * driver->worst_error)
        << "the engine has changed: build the target measure";
}

INSTANTIATE_TEST_SUITE_P(Driver,
                         MeasuredTimes,
                         testing::Values(TimedDriver{"spi", "polled", BusKind::spi, 2},
                                         TimedDriver{"spi_timed", "timed", BusKind::spi_timed, 2},
                                         TimedDriver{"usart_spi", "usart", BusKind::usart_spi, 2},
                                         TimedDriver{"parallel8", "split", BusKind::parallel8, 2}),
                         [](const auto& driver) { return std::string{driver.param.name}; });

TEST(MeasuredTimesTable, ATimedDriverTakesWhatItsInstructionsCount) {
    // 18 and 16 cycles a byte: standards BUS-15 and BUS-13.
    for (const measured::DriverTime& driver : measured::driver_time) {
        if (driver.kind == BusKind::spi_timed) {
            EXPECT_EQ(driver.pixel, 18.0 * driver.bytes_per_pixel);
        }
        if (driver.kind == BusKind::usart_spi) {
            EXPECT_EQ(driver.pixel, 16.0 * driver.bytes_per_pixel);
        }
    }
}

}  // namespace
}  // namespace dialplate

#include "sim/display/bus_time.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

constexpr Hertz mhz(double megahertz) {
    return Hertz{megahertz * 1e6};
}
constexpr BusClocks half_of(double megahertz) {
    return {mhz(megahertz), mhz(megahertz / 2.0)};
}

TEST(BusTime, TakesThePublishedCyclesForEachByte) {
    struct Row {
        BusKind kind;
        BusClocks clocks;
        int cycles;
        const char* source;
    };
    const Row rows[] = {
        {BusKind::usart_spi, half_of(16), 16, "standards BUS-13: a floor"},
        {BusKind::spi_timed, half_of(16), 18, "standards section 10, item 12"},
        {BusKind::spi_timed, half_of(8), 18, "the same at another clock"},
        {BusKind::spi, half_of(16), 22, "within BUS-15's 20 to 30: 44 cycles a pixel"},
        {BusKind::spi, {mhz(16), mhz(4)}, 38, "a quarter of the clock: sixteen cycles more"},
        {BusKind::usart_spi, {mhz(16), mhz(4)}, 32, "BUS-13 at a quarter of the clock"},
        {BusKind::parallel8, {mhz(16), mhz(8)}, 5, "standards BUS-19"},
        {BusKind::parallel8, {mhz(16), mhz(2)}, 8, "strobes slower than the driver"},
        {BusKind::usart_spi, {mhz(14.7456), mhz(7.3728)}, 16, "a clock that is no whole megahertz"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(cycles_per_byte(row.kind, row.clocks).value, row.cycles);
    }
}

TEST(BusTime, GivesAnAvrHalfItsClock) {
    EXPECT_EQ(fastest_serial_clock(mhz(16)), mhz(8));  // standards BUS-12: 125 ns
}

TEST(BusTime, FillsScreensInThePublishedTime) {
    struct Row {
        std::int64_t bytes;
        BusKind kind;
        double processor_mhz;
        double ms;
        const char* source;
    };
    const Row rows[] = {
        {153'600, BusKind::usart_spi, 16, 153.6, "standards BUS-14"},
        {153'600, BusKind::usart_spi, 8, 307.2, "standards BUS-14"},
        {153'600, BusKind::spi_timed, 16, 172.8, "standards BUS-15"},
        {128 * 160 * 2, BusKind::usart_spi, 16, 40.96, "standards BUS-16"},
        {240 * 240 * 2, BusKind::usart_spi, 16, 115.2, "standards BUS-16"},
        {320 * 480 * 2, BusKind::usart_spi, 16, 307.2, "standards BUS-16"},
        {320 * 480 * 3, BusKind::usart_spi, 16, 460.8, "standards BUS-16"},
        {153'600, BusKind::parallel8, 16, 48.0, "standards BUS-19"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const BusClocks clocks = half_of(row.processor_mhz);
        const Cycles cycles = bus_cycles(Bytes{row.bytes}, row.kind, clocks);
        EXPECT_NEAR(time_of(cycles, clocks.processor).value, row.ms, 1e-9);
    }
    EXPECT_EQ(bus_cycles(Bytes{153'600}, BusKind::usart_spi, half_of(16)).value, 2'457'600);
}

TEST(BusTime, SaysWhichDriversAreCountedAndWhichAreAveraged) {
    // standards BUS-15: a plain loop takes 20 to 30 cycles a byte.
    const auto cycles = cycles_per_byte(BusKind::spi, half_of(16)).value;
    EXPECT_GE(cycles, 20);
    EXPECT_LE(cycles, 30);
    EXPECT_FALSE(bus_driver(BusKind::spi).exact);
    EXPECT_TRUE(bus_driver(BusKind::spi_timed).exact);
    EXPECT_TRUE(bus_driver(BusKind::usart_spi).exact);
    EXPECT_FALSE(bus_driver(BusKind::parallel8).exact) << "equal bytes go faster";
}

TEST(BusTime, RedrawsRectanglesInThePublishedTime) {
    struct Row {
        SentRectangle sent;
        int times;
        double ms;
        const char* source;
    };
    // standards BUS-18: (11 + w*h*bpp) * 16 cycles at 16 MHz; printed to three decimals.
    const Row rows[] = {
        {{12, 16, 2}, 1, 0.395, "standards BUS-18, 12x16 glyph"},
        {{16, 24, 2}, 1, 0.779, "standards BUS-18, 16x24 glyph"},
        {{24, 32, 2}, 8, 12.376, "standards BUS-18, 8 digits of 24x32"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const Bytes bytes = rectangle_bytes(row.sent) * row.times;
        const Cycles cycles = bus_cycles(bytes, BusKind::usart_spi, half_of(16));
        EXPECT_NEAR(time_of(cycles, mhz(16)).value, row.ms, 0.0005);
    }
    // standards BUS-04: the window alone, 11.0 us at 16 MHz and 16 cycles.
    const Cycles window = bus_cycles(window_bytes, BusKind::usart_spi, half_of(16));
    EXPECT_NEAR(time_of(window, mhz(16)).value, 0.0110, 1e-9);
}

TEST(BusTime, KnowsTheControllersOwnLimit) {
    struct Row {
        BusKind kind;
        double write_ns;
        double ms;
        const char* source;
    };
    const Row rows[] = {
        {BusKind::spi, 100, 122.88, "standards BUS-17"},
        {BusKind::spi, 66, 81.1008, "standards BUS-17"},
        {BusKind::spi, 16, 19.6608, "standards BUS-17"},
        {BusKind::parallel8, 66, 10.1376, "standards BUS-11"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_NEAR(controller_floor(Bytes{153'600}, row.kind, row.write_ns).value, row.ms, 1e-9);
    }
}

TEST(BusTime, SendsTwoBytesAPixelInParallel) {
    Display display;
    display.bytes_per_pixel = 3;  // standards BUS-09
    EXPECT_EQ(bytes_per_pixel(display, BusKind::spi_timed), 3);
    EXPECT_EQ(bytes_per_pixel(display, BusKind::parallel8), 2);
}

}  // namespace
}  // namespace dialplate

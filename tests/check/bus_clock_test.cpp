#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

TEST(BusClock, FollowsTheWriteCyclesOfTheControllers) {
    struct Row {
        const char* controller;
        BusKind kind;
        double cycle_ns, clock_mhz;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {"ILI9341", BusKind::spi, 100, 8, false, "BUS-06: 125 ns is fine (read, second-hand)"},
        {"ILI9341", BusKind::spi, 100, 10, false, "BUS-06: 10 MHz just passes"},
        {"ILI9341", BusKind::spi, 100, 10.01, true, "one step faster"},
        {"ILI9341", BusKind::spi, 100, 16, true, "BUS-06: out of data sheet (read, second-hand)"},
        {"ST7735R", BusKind::spi, 66, 15.15, false, "BUS-07 (read, second-hand)"},
        {"ST7735R", BusKind::spi, 66, 15.16, true, "BUS-07, one step faster"},
        {"ST7789VW", BusKind::spi, 16, 62.5, false, "BUS-08: VW (read, second-hand)"},
        {"ST7789V", BusKind::spi, 66, 62.5, true, "BUS-08: V and S (read, second-hand)"},
        {"ILI9341", BusKind::parallel8, 66, 15.15, false, "BUS-11 (read, second-hand)"},
        {"ILI9341", BusKind::parallel8, 66, 15.16, true, "BUS-11, one step faster"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Sample s;
        s.layout.mcu.family = "cortex-m3";
        s.layout.clock = Hertz{72e6};
        s.layout.display.controller = row.controller;
        s.layout.bus = {.kind = row.kind, .clock = Hertz{row.clock_mhz * 1e6}};
        (row.kind == BusKind::parallel8 ? s.layout.display.parallel_write_ns
                                        : s.layout.display.serial_write_ns) = row.cycle_ns;
        const auto found = s.found("bus-clock");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (row.found) {
            EXPECT_EQ(found[0].severity, Severity::should) << "warned of, not refused";
            EXPECT_EQ(found[0].required, row.cycle_ns);
            EXPECT_EQ(found[0].unit, "ns");
        }
    }
}

TEST(BusClock, KnowsThatAnAvrSendsABitInTwoCycles) {
    // BUS-12 (read): 16 MHz gives 8 MHz, 125 ns.
    Sample s;
    s.layout.mcu.family = "avr";
    s.layout.clock = Hertz{16e6};
    s.layout.bus = {.kind = BusKind::spi_timed, .clock = Hertz{8e6}};
    EXPECT_TRUE(s.found("bus-clock").empty());
    s.layout.bus.clock = Hertz{8.01e6};
    const Finding finding = sample::only(s.found("bus-clock"));
    EXPECT_EQ(finding.required, 125);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("say 8.00 MHz"));
}

}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// A controller for 3.3 V that is destroyed above 4.6 V (SAF-01).
Sample wired(std::optional<double> supply_v, std::optional<bool> level_shifted) {
    Sample s;
    s.layout.mcu.family = "avr";
    s.layout.clock = Hertz{8e6};
    s.layout.display.controller = "ILI9341";
    s.layout.display.logic_supply_max_v = 3.3;
    s.layout.display.logic_absolute_max_v = 4.6;
    s.layout.wiring.supply_v = supply_v;
    s.layout.wiring.level_shifted = level_shifted;
    return s;
}

}  // namespace

TEST(LogicLevel, FollowsTheDataSheet) {
    struct Row {
        std::optional<double> supply_v;
        std::optional<bool> level_shifted;
        std::optional<Severity> found;
        const char* source;
    };
    const Row rows[] = {
        {5.0, false, Severity::must, "SAF-01: 5 V fails (read, second-hand)"},
        {5.0, {}, Severity::must, "SAF-01: nothing said of level shifting"},
        {5.0, true, {}, "SAF-01: shifted"},
        {4.6, false, Severity::should, "SAF-01: 4.6 V survives, is out of the recommended range"},
        {4.61, false, Severity::must, "a hundredth of a volt more"},
        {3.3, false, {}, "SAF-01: 3.3 V just passes (read)"},
        {3.31, false, Severity::should, "a hundredth of a volt more"},
        {5.5, true, {}, "SAF-04: 0.6 of 5.5 V are 3.3 V (memory)"},
        {5.51, true, Severity::should, "a hundredth of a volt more: 3.3 V are not read as high"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const auto found = wired(row.supply_v, row.level_shifted).found("logic-level");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (row.found) {
            EXPECT_EQ(found[0].severity, *row.found);
        }
    }
}

TEST(LogicLevel, InfersTheSupplyThatAClockNeeds) {
    // MCU-09 (memory): 16 MHz need 3.78 V, 13.33 MHz 3.3 V.
    Sample s = wired({}, {});
    s.layout.mcu.speed_grades = {{1.8, Hertz{4e6}}, {2.7, Hertz{10e6}}, {4.5, Hertz{20e6}}};
    s.layout.clock = Hertz{16e6};
    const Finding finding = sample::only(s.found("logic-level"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(*finding.measured, 3.78, 1e-9);
    s.layout.wiring.level_shifted = true;
    EXPECT_TRUE(s.found("logic-level").empty());
    s.layout.wiring.level_shifted = std::nullopt;
    s.layout.clock = Hertz{13.33e6};
    EXPECT_TRUE(s.found("logic-level").empty());
}

}  // namespace dialplate

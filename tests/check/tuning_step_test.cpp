#include "tests/check/dial_sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

struct Dial {
    const char* unit = "Hz";
    int drop = 0;
};

std::vector<Finding> judged(const Dial& dial, int step, const char* step_unit) {
    Sample s;
    sample::add_frequency(s, dial.unit, 29999999);
    Item& item = s.add(ItemKind::readout, {.x = 10, .y = 10, .width = 200, .height = 30});
    item.readout.value = static_cast<ValueId>(s.layout.values.size() - 1);
    item.readout.face = Sample::words;
    item.readout.ink = s.white;
    item.readout.groups = {2, 3, 3};
    item.readout.drop = dial.drop;
    Choice choice;
    choice.text = "step";
    choice.number = step;
    Value& steps = sample::add_value(s, "step", ValueType::choice, Role::step);
    steps.unit = step_unit;
    sample::add_choices(steps, {choice});
    return s.found("tuning-step");
}

}  // namespace

TEST(TuningStep, IsExactInTheDialsUnit) {
    // RX-14 (memory): 1, 10, 100 Hz, 1, 5, 9, 10, 100 kHz; in whole hertz all of them are exact.
    for (const int step : {1, 10, 100, 1000, 5000, 9000, 10000, 100000})
        EXPECT_TRUE(judged({.unit = "Hz"}, step, "Hz").empty()) << step;
    EXPECT_TRUE(judged({.unit = "kHz"}, 9, "kHz").empty());
    EXPECT_TRUE(judged({.unit = "kHz"}, 5000, "Hz").empty());
    const Finding finding = sample::only(judged({.unit = "kHz"}, 100, "Hz"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.required, 1000);
    EXPECT_EQ(sample::only(judged({.unit = "kHz"}, 2500, "Hz")).severity, Severity::must);
}

TEST(TuningStep, ShowsOnAReadout) {
    EXPECT_TRUE(judged({.drop = 1}, 10, "Hz").empty());
    const Finding unseen = sample::only(judged({.drop = 1}, 9, "Hz"));
    EXPECT_EQ(unseen.severity, Severity::should);
    EXPECT_EQ(unseen.required, 10);
    EXPECT_EQ(sample::only(judged({.drop = 1}, 25, "Hz")).severity, Severity::note) << "uneven";
}

}  // namespace dialplate

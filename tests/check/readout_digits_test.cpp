#include "tests/check/dial_sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

std::vector<Finding> judged(std::int32_t max, std::vector<int> groups, int drop) {
    Sample s;
    sample::add_frequency(s, "Hz", max);
    Item& item = s.add(ItemKind::readout, {.x = 10, .y = 10, .width = 200, .height = 30});
    item.readout.value = static_cast<ValueId>(s.layout.values.size() - 1);
    item.readout.face = Sample::words;
    item.readout.ink = s.white;
    item.readout.groups = std::move(groups);
    item.readout.drop = drop;
    return s.found("readout-digits");
}

}  // namespace

TEST(ReadoutDigits, HaveRoomForTheHighestFrequency) {
    // RX-15 (memory): 29700000 is shown as 29.700.000, 7100000 as 7.100.000.
    EXPECT_TRUE(judged(29700000, {2, 3, 3}, 0).empty());
    const Finding finding = sample::only(judged(29700000, {1, 3, 3}, 0));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_EQ(finding.measured, 7);
    EXPECT_EQ(finding.required, 8);
    EXPECT_TRUE(judged(9999999, {1, 3, 3}, 0).empty());
    EXPECT_EQ(judged(10000000, {1, 3, 3}, 0).size(), 1u);
}

TEST(ReadoutDigits, CountDroppedDigits) {
    EXPECT_TRUE(judged(29700000, {2, 3, 2}, 1).empty());
    EXPECT_EQ(judged(29700000, {2, 3, 1}, 1).size(), 1u);
}

}  // namespace dialplate

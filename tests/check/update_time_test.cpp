#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

sample::Sample with_event(double milliseconds) {
    sample::Sample s;
    EventTime event;
    event.event = "page main";
    event.time = Milliseconds{milliseconds};
    event.bus_bytes = Bytes{153611};
    s.ledger.time.push_back(event);
    return s;
}

}  // namespace

TEST(UpdateTime, TellsAnEventThatTakesLongerThanFeelsImmediate) {
    EXPECT_TRUE(with_event(100.0).found("update-time").empty()) << "BUS-21";
    // BUS-14: a whole screen of 320 x 240 takes 153.6 ms at 16 cycles a byte and 16 MHz.
    const Finding finding = sample::only(with_event(153.6).found("update-time"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.measured, 153.6);
    EXPECT_EQ(finding.required, 100);
    EXPECT_EQ(finding.pointer, "/pages/0");
    EXPECT_THAT(finding.message, ::testing::HasSubstr("35 % fewer pixels"));
    EXPECT_EQ(with_event(100.001).found("update-time").size(), 1u);
}

}  // namespace dialplate

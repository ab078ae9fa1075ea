#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

sample::Sample with_event(double milliseconds, EventKind kind = EventKind::tuning) {
    sample::Sample s;
    EventTime event;
    event.kind = kind;
    event.event = "tuning step";
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

TEST(UpdateTime, NotesANewPageThatKeepsTheThread) {
    struct Row {
        double milliseconds;
        std::optional<Severity> severity;
    };
    for (const Row& row : {Row{100.0, std::nullopt},
                           Row{153.6, Severity::note},
                           Row{1000.0, Severity::note},
                           Row{1000.001, Severity::should}}) {
        SCOPED_TRACE(row.milliseconds);
        const auto found = with_event(row.milliseconds, EventKind::page).found("update-time");
        if (!row.severity) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        EXPECT_EQ(sample::only(found).severity, *row.severity) << "BUS-21";
    }
}

}  // namespace dialplate

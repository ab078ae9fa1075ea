#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// A value whose change takes that long to draw.
Sample changing(const std::string& event, double ms, std::optional<double> per_second, Role role) {
    Sample s;
    Value value;
    value.name = "signal";
    value.role = role;
    value.per_second = per_second;
    value.pointer = "/values/signal";
    s.layout.values.push_back(value);
    EventTime time;
    time.event = event;
    time.time = Milliseconds{ms};
    s.ledger.time = {time};
    return s;
}

}  // namespace

TEST(UpdateRate, HoldsTheTimeOfAChangeAgainstTheNextOne) {
    // Arithmetic: 40 a second leave 25 ms.
    EXPECT_TRUE(changing("signal full swing", 25.0, 40, Role::none).found("update-rate").empty());
    const Finding finding =
        sample::only(changing("signal full swing", 25.1, 40, Role::none).found("update-rate"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.required, 25);
    EXPECT_EQ(finding.pointer, "/values/signal");
    EXPECT_FALSE(changing("signal change", 25.1, 40, Role::none).found("update-rate").empty());
    EXPECT_TRUE(changing("other change", 25.1, 40, Role::none).found("update-rate").empty());
}

TEST(UpdateRate, KnowsNothingOfValuesThatSayNothing) {
    EXPECT_TRUE(changing("signal change", 9999, {}, Role::none).found("update-rate").empty());
}

TEST(UpdateRate, NotesADialThatAFastHandOutruns) {
    // Common practice, no source: 20 detents a second, 50 ms.
    EXPECT_TRUE(changing("tuning step", 50.0, {}, Role::frequency).found("update-rate").empty());
    const Finding finding =
        sample::only(changing("tuning step", 50.1, {}, Role::frequency).found("update-rate"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.required, 50);
    EXPECT_EQ(sample::only(changing("tuning step", 50.1, 40, Role::frequency).found("update-rate"))
                  .severity,
              Severity::should);
}

}  // namespace dialplate

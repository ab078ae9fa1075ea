#include "tests/check/dial_sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

std::vector<Finding> judged(int khz, const char* mode) {
    Sample s;
    sample::add_frequency(s, "kHz", 30000);
    Choice choice = sample::band("here", 1, 30000);
    choice.number = khz;
    choice.mode = mode;
    sample::add_choices(sample::add_value(s, "band", ValueType::choice, Role::band), {choice});
    Choice lower, upper, morse;
    lower.text = "LSB";
    upper.text = "USB";
    morse.text = "CW";
    sample::add_choices(sample::add_value(s, "mode", ValueType::choice, Role::mode),
                        {lower, upper, morse});
    return s.found("sideband");
}

}  // namespace

TEST(Sideband, FollowsTheCustom) {
    struct Row {
        int khz;
        const char *usual, *other;
    };
    // RX-10 (read): 3.7 and 7.1 LSB, 5.354 and 14.2 USB.
    for (const Row& row : {Row{3700, "LSB", "USB"},
                           Row{5354, "USB", "LSB"},
                           Row{7100, "LSB", "USB"},
                           Row{10100, "USB", "LSB"},
                           Row{14200, "USB", "LSB"}}) {
        SCOPED_TRACE(row.khz);
        EXPECT_TRUE(judged(row.khz, row.usual).empty());
        const Finding finding = sample::only(judged(row.khz, row.other));
        EXPECT_EQ(finding.severity, Severity::note);
        ASSERT_EQ(finding.cure.size(), 1u);
        EXPECT_EQ(finding.cure[0].value, "\"" + std::string(row.usual) + "\"");
    }
}

TEST(Sideband, LeavesOtherModesAndOtherServicesAlone) {
    EXPECT_TRUE(judged(7030, "CW").empty());
    EXPECT_TRUE(judged(4125, "USB").empty()) << "ships have a custom of their own";
}

}  // namespace dialplate

#include "tests/check/dial_sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

std::vector<Finding> judged(const char* text,
                            int at,
                            const char* unit = "dBm",
                            int max_khz = 30000) {
    Sample s;
    sample::add_frequency(s, "kHz", max_khz);
    sample::add_value(s, "signal", ValueType::level, Role::signal).unit = unit;
    Item& item = s.add(ItemKind::meter, {.x = 10, .y = 10, .width = 200, .height = 30});
    item.meter.value = static_cast<ValueId>(s.layout.values.size() - 1);
    item.meter.face = Sample::words;
    item.meter.over_from = 1;
    item.meter.ink = item.meter.mark_ink = s.white;
    item.meter.marks = {{.at = at, .text = text, .pointer = "/pages/0/items/0/marks/0"}};
    return s.found("signal-marks");
}

}  // namespace

TEST(SignalMarks, StandWhereTheRecommendationPutsThem) {
    struct Row {
        const char* text;
        int dbm;
        const char* source;
    };
    const Row rows[] = {
        {"S1", -121, "S table (derived from RX-01 to RX-03)"},
        {"3", -109, "S table"},
        {"S5", -97, "S table"},
        {"7", -85, "S table"},
        {"9", -73, "RX-01 (read, second-hand)"},
        {"9+10", -63, "S table"},
        {"S9+20", -53, "RX-06 (derived)"},
        {"+40", -33, "S table"},
        {"60", -13, "S table"},
        {"+20 dB", -53, "RX-06 (derived)"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(std::string(row.text) + ": " + row.source);
        EXPECT_TRUE(judged(row.text, row.dbm).empty());
        for (const int off : {-1, 1}) {
            const Finding finding = sample::only(judged(row.text, row.dbm + off));
            EXPECT_EQ(finding.required, row.dbm);
            ASSERT_EQ(finding.cure.size(), 1u);
            EXPECT_EQ(finding.cure[0].pointer, "/pages/0/items/0/marks/0/at");
            EXPECT_EQ(finding.cure[0].value, std::to_string(row.dbm));
        }
    }
}

TEST(SignalMarks, MayKeepToThePracticeAboveThirtyMegahertz) {
    EXPECT_TRUE(judged("9", -93, "dBm", 150000).empty()) << "RX-02 (read, second-hand)";
    EXPECT_FALSE(judged("9", -93, "dBm", 29999).empty());
}

TEST(SignalMarks, AreOnlyJudgedWhereTheyClaimAnSUnit) {
    EXPECT_TRUE(judged("weak", -50).empty());
    EXPECT_TRUE(judged("", -50).empty());
    EXPECT_TRUE(judged("9", -50, "dBuV").empty());
}

}  // namespace dialplate

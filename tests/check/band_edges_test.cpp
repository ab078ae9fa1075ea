#include "tests/check/dial_sample.hpp"

namespace dialplate {

using sample::Sample;

namespace {

std::vector<Finding> judged(const Choice& band, int region, const std::string& unit = "kHz") {
    Sample s;
    s.layout.region = region;
    sample::add_frequency(s, unit, 30000);
    sample::add_choices(sample::add_value(s, "band", ValueType::choice, Role::band), {band});
    return s.found("band-edges");
}

}  // namespace

TEST(BandEdges, FollowsTheTableOfTheRegion) {
    struct Row {
        const char* band;
        int region, low_khz, high_khz;
        const char* source;
    };
    // Section 8 of the figures; both edges of each row just pass.
    const Row rows[] = {
        {"160 m", 1, 1810, 2000, "R1 plan; table 1810-1850 (read)"},
        {"160 m", 2, 1800, 2000, "read"},
        {"80 m", 1, 3500, 3800, "read"},
        {"80 m", 2, 3500, 4000, "read"},
        {"80 m", 3, 3500, 3900, "read"},
        {"40 m", 1, 7000, 7200, "read"},
        {"40 m", 2, 7000, 7300, "read"},
        {"30 m", 1, 10100, 10150, "read"},
        {"20 m", 1, 14000, 14350, "read"},
        {"17 m", 1, 18068, 18168, "read"},
        {"15 m", 1, 21000, 21450, "read; not the broadcast band of that name"},
        {"12 m", 1, 24890, 24990, "read"},
        {"10 m", 1, 28000, 29700, "read"},
        {"49 m", 1, 5900, 6200, "broadcast (read)"},
        {"31 m", 1, 9400, 9900, "broadcast (read)"},
        {"15 m", 1, 18900, 19020, "broadcast (read); not the amateur band of that name"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(std::string(row.band) + ", Region " + std::to_string(row.region) + ": " +
                     row.source);
        EXPECT_TRUE(judged(sample::band(row.band, row.low_khz, row.high_khz), row.region).empty());
        const Finding low =
            sample::only(judged(sample::band(row.band, row.low_khz - 1, row.high_khz), row.region));
        EXPECT_EQ(low.required, row.low_khz);
        EXPECT_EQ(low.pointer, "/values/band/choices/0/low");
        const Finding high =
            sample::only(judged(sample::band(row.band, row.low_khz, row.high_khz + 1), row.region));
        EXPECT_EQ(high.required, row.high_khz);
        ASSERT_EQ(high.cure.size(), 1u);
        EXPECT_EQ(high.cure[0].pointer, "/values/band/choices/0/high");
        EXPECT_EQ(high.cure[0].value, std::to_string(row.high_khz));
    }
}

TEST(BandEdges, CountsInTheDialsUnit) {
    const Finding finding = sample::only(judged(sample::band("40m", 7000000, 7200001), 1, "Hz"));
    EXPECT_EQ(finding.required, 7200000);
    EXPECT_EQ(finding.unit, "Hz");
}

TEST(BandEdges, SaysWhereABandLiesThatIsElsewhere) {
    const Finding finding = sample::only(judged(sample::band("40 m", 14000, 14350), 1));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("at 7000 to 7200"));
    EXPECT_TRUE(finding.cure.empty());
}

TEST(BandEdges, OffersNoCureThatLeavesTheFirstFrequencyOutside) {
    Choice choice = sample::band("40 m", 7000, 7300);
    choice.number = 7250;
    EXPECT_TRUE(sample::only(judged(choice, 1)).cure.empty());
    choice.number = 7100;
    EXPECT_EQ(sample::only(judged(choice, 1)).cure.size(), 1u);
}

TEST(BandEdges, LeavesNarrowerBandsAndOtherNamesAlone) {
    EXPECT_TRUE(judged(sample::band("40 m", 7040, 7060), 1).empty());
    EXPECT_TRUE(judged(sample::band("ships", 1, 2), 1).empty());
    EXPECT_TRUE(judged(sample::band("4 MHz", 4063, 4438), 1).empty());
}

}  // namespace dialplate

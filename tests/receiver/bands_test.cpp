#include "sim/receiver/bands.hpp"

#include <gtest/gtest.h>

#include <string>

namespace dialplate {
namespace {

TEST(Bands, MeetThePublishedAmateurTable) {
    struct Row {
        const char* name;
        double khz[3][2];  // Regions 1, 2, 3.
    };
    // standards, section 8, "Amateur bands"; 160 m in Region 1 as section 10, item 17.
    const Row rows[] = {
        {"160 m", {{1810, 2000}, {1800, 2000}, {1800, 2000}}},
        {"80 m", {{3500, 3800}, {3500, 4000}, {3500, 3900}}},
        {"60 m", {{5351.5, 5366.5}, {5351.5, 5366.5}, {5351.5, 5366.5}}},
        {"40 m", {{7000, 7200}, {7000, 7300}, {7000, 7200}}},
        {"30 m", {{10100, 10150}, {10100, 10150}, {10100, 10150}}},
        {"20 m", {{14000, 14350}, {14000, 14350}, {14000, 14350}}},
        {"17 m", {{18068, 18168}, {18068, 18168}, {18068, 18168}}},
        {"15 m", {{21000, 21450}, {21000, 21450}, {21000, 21450}}},
        {"12 m", {{24890, 24990}, {24890, 24990}, {24890, 24990}}},
        {"10 m", {{28000, 29700}, {28000, 29700}, {28000, 29700}}},
    };
    ASSERT_EQ(amateur_bands().size(), std::size(rows));
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        SCOPED_TRACE(rows[i].name);
        const AmateurBand& band = amateur_bands()[i];
        EXPECT_STREQ(band.name, rows[i].name);
        const Region regions[] = {Region::one, Region::two, Region::three};
        for (std::size_t r = 0; r < 3; ++r) {
            EXPECT_EQ(band.edges(regions[r]).low * 1.0, rows[i].khz[r][0] * 1000.0);
            EXPECT_EQ(band.edges(regions[r]).high * 1.0, rows[i].khz[r][1] * 1000.0);
        }
    }
}

TEST(Bands, MeetThePublishedBroadcastTable) {
    struct Row {
        const char* name;
        int low, high;
    };
    // standards, section 8, "Broadcast bands"; 19 m and 41 m as section 10, item 15.
    const Row rows[] = {{"49 m", 5900, 6200},
                        {"41 m", 7200, 7450},
                        {"31 m", 9400, 9900},
                        {"25 m", 11600, 12100},
                        {"22 m", 13570, 13870},
                        {"19 m", 15100, 15800},
                        {"16 m", 17480, 17900},
                        {"15 m", 18900, 19020},
                        {"13 m", 21450, 21850},
                        {"11 m", 25670, 26100}};
    ASSERT_EQ(broadcast_bands().size(), std::size(rows));
    for (std::size_t i = 0; i < std::size(rows); ++i) {
        EXPECT_STREQ(broadcast_bands()[i].name, rows[i].name);
        EXPECT_EQ(broadcast_bands()[i].edges, (BandEdges{rows[i].low * 1000, rows[i].high * 1000}));
    }
}

TEST(Bands, AreFoundByFrequencyAndRegion) {
    const auto name = [](std::int32_t hertz, Region region) {
        const AmateurBand* band = amateur_band_at(hertz, region);
        return band == nullptr ? std::string() : std::string(band->name);
    };
    EXPECT_EQ(name(7'000'000, Region::one), "40 m") << "both edges belong to it";
    EXPECT_EQ(name(7'200'000, Region::one), "40 m");
    EXPECT_EQ(name(7'200'001, Region::one), "");
    EXPECT_EQ(name(7'250'000, Region::two), "40 m");
    EXPECT_EQ(name(1'805'000, Region::one), "");
    EXPECT_EQ(name(1'805'000, Region::three), "160 m");
    EXPECT_STREQ(broadcast_band_at(6'000'000)->name, "49 m");
    EXPECT_EQ(broadcast_band_at(6'500'000), nullptr);
}

TEST(Bands, ChooseTheCustomarySideband) {
    struct Row {
        std::int32_t hertz;
        Sideband expected;
    };
    // standards RX-10 (a national society's plan, 2019; IARU Region 1 plan, 2020).
    const Row rows[] = {{3'700'000, Sideband::lower},
                        {5'354'500, Sideband::upper},
                        {7'100'000, Sideband::lower},
                        {14'200'000, Sideband::upper},
                        {9'999'999, Sideband::lower},
                        {10'000'000, Sideband::upper}};
    for (const Row& row : rows)
        EXPECT_EQ(usual_sideband(row.hertz), row.expected) << row.hertz;
}

}  // namespace
}  // namespace dialplate

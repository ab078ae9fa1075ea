#include "sim/ledger/packing_trade.hpp"

#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/ledger/trade_report.hpp"
#include "tests/ledger/ready.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace dialplate {
namespace {

using testing::HasSubstr;

/// Segment digits in cells of 20 + 4 by 40 pixels, raster ones three times as large as figures16 has them, and words.
std::string document(const std::string& packing = "automatic") {
    return R"({"title": "two readouts", "display": "2.8in-ILI9341", "turn": 90,
        "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "usart_spi", "clock_mhz": 8},
        "paints": {"ground": "#000000", "ink": "#FFFFFF"},
        "faces": {"lit": {"segments": {"width": 20, "height": 40, "stroke": 4, "gap": 4}},
          "figures": {"file": "figures16.bdf", "size": 16, "scale": 3, "packing": ")" +
           packing + R"("}, "words": {"file": "legend14.bdf", "size": 14}},
        "values": {
          "frequency": {"type": "number", "min": 0, "max": 29999999, "start": 7100000, "role": "frequency"},
          "count": {"type": "number", "min": 0, "max": 9, "start": 0}},
        "pages": [{"name": "main", "ground": "ground", "items": [
          {"kind": "readout", "name": "dial", "at": [8, 8], "size": [200, 40], "value": "frequency", "face": "lit",
           "ink": "ink", "ground": "ground", "groups": [8]},
          {"kind": "readout", "name": "again", "at": [8, 60], "size": [200, 40], "value": "frequency", "face": "lit",
           "ink": "ink", "ground": "ground", "groups": [8]},
          {"kind": "readout", "name": "count", "at": [8, 120], "size": [60, 60], "value": "count", "face": "figures",
           "ink": "ink", "ground": "ground", "groups": [1]},
          {"kind": "legend", "at": [100, 120], "size": [100, 20], "text": "COUNT", "face": "words", "ink": "ink"}]}]})";
}

Ready ready_from(const std::string& text) {
    return ready(read_layout(text, "trade.json", DIALPLATE_TREE "/layouts"));
}

}  // namespace

TEST(DigitChange, SendsOneCellWhateverElseShowsTheValue) {
    const Ready it = ready_from(document());
    const auto change = digit_change(it.layout, it.built, 0, 0);
    ASSERT_TRUE(change.has_value());
    // A window of 11 bytes (BUS-04) and 24 x 40 pixels of two; the second readout is left out.
    EXPECT_EQ(change->bus_bytes.value, 11 + 24 * 40 * 2);
    // The bus alone: 8 bits a byte at 8 MHz.
    EXPECT_NEAR(change->share_of_limit * change->median.value, 1931 / 1000.0, 1e-6);
    EXPECT_GE(change->worst, change->median);
}

TEST(DigitChange, NeedsTwoDigits) {
    Ready it = ready_from(document());
    it.layout.values[1].max = 0;
    EXPECT_FALSE(digit_change(it.layout, it.built, 0, 2).has_value());
}

TEST(PackingTrade, WeighsEachPackingAsIfTheAuthorHadNamedIt) {
    const Ready it = ready_from(document());
    const FaceTrade trade = packing_trade(it.layout, it.built, 1);
    EXPECT_EQ(trade.item, "count");
    EXPECT_EQ(std::count_if(trade.ways.begin(),
                            trade.ways.end(),
                            [](const PackingTrade& way) { return way.chosen; }),
              1);
    for (const std::string packing : {"plain", "runs", "context"}) {
        SCOPED_TRACE(packing);
        const auto way = std::find_if(trade.ways.begin(), trade.ways.end(), [&](const auto& each) {
            return each.packing == packing && !each.by_what_differs;
        });
        ASSERT_NE(way, trade.ways.end());
        const Ready named = ready_from(document(packing));
        EXPECT_EQ(way->flash, flash_account(named.layout, named.built).total);
        const auto digit = digit_change(named.layout, named.built, 0, 2);
        ASSERT_TRUE(digit && way->digit);
        EXPECT_EQ(way->digit->median, digit->median);
    }
}

TEST(PackingTrade, KnowsDigitsByWhatDiffersWhereTheEngineDoes) {
    // Changed runs are for plain, runs and segments (ui/image.md), and take code of their own.
    const Ready it = ready_from(document());
    for (const FaceId face : {0, 1}) {
        const FaceTrade trade = packing_trade(it.layout, it.built, face);
        for (const PackingTrade& way : trade.ways) {
            if (!way.by_what_differs) continue;
            EXPECT_NE(way.packing, "context");
            const auto whole =
                std::find_if(trade.ways.begin(), trade.ways.end(), [&](const auto& each) {
                    return each.packing == way.packing && !each.by_what_differs;
                });
            ASSERT_NE(whole, trade.ways.end());
            EXPECT_LT(way.digit->median, whole->digit->median);
            EXPECT_GT(way.flash, whole->flash);
        }
        EXPECT_TRUE(std::any_of(trade.ways.begin(), trade.ways.end(), [](const auto& way) {
            return way.by_what_differs;
        }));
    }
}

TEST(PackingTrade, TellsAllFacesThatAreShown) {
    const Ready it = ready_from(document());
    const std::vector<FaceTrade> trades = packing_trades(it.layout, it.built);
    ASSERT_EQ(trades.size(), 3u);
    EXPECT_TRUE(trades[2].item.empty());
    const std::string text = trade_text(it.layout, trades);
    for (const char* words : {"lit", "figures", "words", "* ", "runs, by what differs", " ms "})
        EXPECT_THAT(text, HasSubstr(words));
}

}  // namespace dialplate

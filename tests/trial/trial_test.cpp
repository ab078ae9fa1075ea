#include "sim/trial/trial.hpp"

#include "sim/layout/reader.hpp"
#include "sim/trial/result.hpp"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cmath>
#include <random>

namespace dialplate {
namespace {

/// One value with two keys of 20 x 20 px side by side, 0.2 mm a pixel: 4 mm.
Layout two_keys() {
    Layout layout;
    layout.title = "two keys";
    layout.display.name = "bench \"A\"";
    layout.display.width = 100;
    layout.display.height = 50;
    layout.display.active_width = Millimetres{20.0};
    layout.display.active_height = Millimetres{10.0};
    Value value;
    value.name = "agc";
    value.type = ValueType::choice;
    value.max = 1;
    value.choices = {{}, {}};
    value.choices[0].text = "slow";
    value.choices[1].text = "fast";
    layout.values.push_back(value);
    Page page;
    page.name = "main";
    for (int i = 0; i < 2; ++i) {
        Item key;
        key.kind = ItemKind::key;
        key.name = value.choices[static_cast<std::size_t>(i)].text;
        key.pointer = "/pages/0/items/" + std::to_string(i);
        key.box = {10 + 30 * i, 10, 20, 20};
        key.key.tap = {ActionKind::set, 0, i, false, 0, ""};
        page.items.push_back(key);
    }
    layout.pages.push_back(page);
    return layout;
}

Situation agc(std::int32_t now) {
    return {0, {now}};
}

TEST(Trial, CountsHitsAndMissesForTheKeyThatTheTaskNeeds) {
    Trial trial(two_keys(), 1, 2);
    trial.begin(agc(0), 1000);
    ASSERT_NE(trial.task(), nullptr);
    EXPECT_EQ(trial.task()->words, "Set agc to fast");
    // The key for fast covers x 40..60, y 10..30; its middle is (50, 20).
    trial.touched(38, 20, agc(0), 1500);  // beside it by 1.5 px: 0.3 mm
    EXPECT_FALSE(trial.look(agc(0), 1600));
    trial.touched(50, 22, agc(0), 2100);
    EXPECT_TRUE(trial.look(agc(1), 2200));
    ASSERT_NE(trial.task(), nullptr);
    EXPECT_EQ(trial.task()->words, "Set agc to slow");
    trial.touched(15, 20, agc(1), 3000);
    EXPECT_TRUE(trial.look(agc(0), 3100));
    EXPECT_EQ(trial.task(), nullptr) << "two were asked for";

    ASSERT_EQ(trial.touches().size(), 3u);
    const TrialTouch& miss = trial.touches()[0];
    EXPECT_FALSE(miss.hit);
    EXPECT_TRUE(miss.near);
    EXPECT_EQ(miss.name, "fast");
    EXPECT_DOUBLE_EQ(miss.off_x.value, -2.3);  // 38.5 - 50 px at 0.2 mm
    EXPECT_DOUBLE_EQ(miss.off_y.value, 0.1);   // 20.5 - 20
    EXPECT_DOUBLE_EQ(miss.after.value, 500.0);
    EXPECT_TRUE(trial.touches()[1].hit);
    EXPECT_DOUBLE_EQ(trial.touches()[1].after.value, 600.0);
    EXPECT_EQ(trial.touches()[2].task, 1);
    EXPECT_DOUBLE_EQ(trial.touches()[2].after.value, 800.0);
    EXPECT_EQ(trial.done(), 2);
    EXPECT_DOUBLE_EQ(trial.outcomes()[0].took.value, 1200.0);
}

TEST(Trial, ATouchFarFromItsKeyIsAMissThatSaysNothingOfTheFinger) {
    Trial trial(two_keys(), 1, 1);
    trial.begin(agc(0), 0);
    trial.touched(9, 20, agc(0), 100);   // 30.5 px from the key: 6.1 mm
    trial.touched(10, 20, agc(0), 200);  // 29.5 px: 5.9 mm
    const TouchFigures all = result_of(trial).all;
    EXPECT_EQ(all.misses, 2);
    EXPECT_EQ(all.landings, 1);
}

TEST(Trial, CanBeLeftAtAnyTime) {
    for (int touches = 0; touches < 3; ++touches) {
        Trial trial(two_keys(), 1);
        trial.begin(agc(0), 0);
        for (int i = 0; i < touches; ++i)
            trial.touched(10, 20, agc(0), 100);
        trial.leave(700);
        EXPECT_EQ(trial.task(), nullptr);
        ASSERT_EQ(trial.outcomes().size(), 1u);
        EXPECT_FALSE(trial.outcomes()[0].done);
        EXPECT_EQ(trial.outcomes()[0].took.value, 700.0);
        EXPECT_EQ(static_cast<int>(trial.touches().size()), touches);
        trial.leave(900);
        trial.touched(10, 20, agc(0), 950);
        EXPECT_FALSE(trial.look(agc(1), 1000));
        EXPECT_EQ(trial.outcomes().size(), 1u);
    }
}

// By hand: offsets from the middle of "fast" at columns 48, 50, 51, 53: -0.3, 0.1, 0.3, 0.7 mm, mean 0.2; squares
// about it 0.25, 0.01, 0.01, 0.25, sum 0.52, / 3 = 0.17333, root 0.41633. Rows 19, 20, 20, 21: -0.1, 0.1, 0.1, 0.3, mean
// 0.1; squares 0.04, 0, 0, 0.04, / 3, root 0.16330. Sigma: root of (0.17333 + 0.02667) / 2 = 0.31623.
TEST(TrialResult, GivesMeanDeviationAndMedianAsWorkedByHand) {
    Trial trial(two_keys(), 1, 1);
    trial.begin(agc(0), 0);
    trial.touched(48, 19, agc(0), 500);
    trial.touched(50, 20, agc(0), 1400);
    trial.touched(51, 20, agc(0), 2000);
    trial.touched(53, 21, agc(0), 2400);
    trial.look(agc(1), 2500);
    const TrialResult result = result_of(trial);
    ASSERT_EQ(result.keys.size(), 1u);
    const TouchFigures& figures = result.keys[0].figures;
    EXPECT_EQ(figures.hits, 4);
    EXPECT_EQ(figures.misses, 0);
    EXPECT_NEAR(figures.off_x_mm, 0.2, 1e-9);
    EXPECT_NEAR(figures.off_y_mm, 0.1, 1e-9);
    EXPECT_NEAR(figures.spread_x_mm.value(), 0.41633, 1e-5);
    EXPECT_NEAR(figures.spread_y_mm.value(), 0.16330, 1e-5);
    EXPECT_NEAR(figures.sigma_mm().value(), 0.31623, 1e-5);
    EXPECT_DOUBLE_EQ(figures.median_ms.value(), 550.0);  // of 500, 900, 600, 400
}

// A finger of the model: landings normal about an aim 0.4 mm right of the middle, 1.5 mm (TCH-22) each way. Standard error
// of sigma 1 / sqrt(4 (n - 1)): 2.5 % for 400; of the mean 1.5 / sqrt(400) = 0.075 mm. Three of each.
TEST(TrialResult, FindsTheScatterOfAFinger) {
    Trial trial(two_keys(), 1, 1);
    trial.begin(agc(0), 0);
    std::mt19937 chance(11);
    std::normal_distribution<double> landing(0.0, 1.5);
    for (int i = 0; i < 400; ++i)
        trial.touched(static_cast<int>(std::floor(50 + (landing(chance) + 0.4) / 0.2)),
                      static_cast<int>(std::floor(20 + landing(chance) / 0.2)),
                      agc(0),
                      100);
    const TouchFigures all = result_of(trial).all;
    EXPECT_EQ(all.landings, 400);
    EXPECT_NEAR(all.sigma_mm().value(), 1.5, 3 * 0.025 * 1.5);
    EXPECT_NEAR(all.off_x_mm, 0.4, 3 * 0.075);
    EXPECT_NEAR(all.off_y_mm, 0.0, 3 * 0.075);
    // TCH-25: a square of 4 mm, aimed at 0.4 mm beside its middle: 0.802 across, 0.818 down.
    EXPECT_NEAR(all.hits / 400.0, 0.802 * 0.818, 3 * 0.024);
}

TEST(TrialResult, IsWrittenAsItsGrammarSays) {
    Trial trial(two_keys(), 9, 2);
    trial.begin(agc(0), 0);
    trial.touched(48, 19, agc(0), 500);
    trial.look(agc(1), 600);
    trial.leave(900);
    const auto json = nlohmann::json::parse(written(trial,
                                                    {.layout_file = "a \\ b.json",
                                                     .date = "2026-05-01T18:20:07Z",
                                                     .finger_mm = 10,
                                                     .scattered = false}));
    EXPECT_EQ(json["trial"], 1);
    EXPECT_EQ(json["layout"], "a \\ b.json");
    EXPECT_EQ(json["display"], "bench \"A\"");
    EXPECT_EQ(json["seed"], 9);
    EXPECT_EQ(json["all"]["hits"], 1);
    EXPECT_TRUE(json["all"]["spread_mm"].is_null());
    EXPECT_EQ(json["keys"][0]["key"], "/pages/0/items/1");
    EXPECT_EQ(json["keys"][0]["page"], "main");
    EXPECT_NEAR(json["touches"][0]["off_mm"][0].get<double>(), -0.3, 1e-9);
    EXPECT_EQ(json["touches"][0]["at"], nlohmann::json({48, 19}));
    EXPECT_EQ(json["tasks"][0]["done"], true);
    EXPECT_EQ(json["tasks"][1]["done"], false);
    EXPECT_EQ(json["tasks"][1]["kind"], "set");
}

TEST(TrialResult, OfNothingIsWrittenToo) {
    Trial trial(two_keys(), 1);
    trial.begin(agc(0), 0);
    trial.leave(10);
    const auto json = nlohmann::json::parse(written(trial, {}));
    EXPECT_TRUE(json["touches"].empty());
    EXPECT_TRUE(json["all"]["median_ms"].is_null());
}

}  // namespace
}  // namespace dialplate

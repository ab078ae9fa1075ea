#include "sim/check/tap_odds.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <random>

namespace dialplate {
namespace {

constexpr Millimetres usual_scatter{1.5};

KeyTarget key(double left, double top, double width, double height) {
    static const Item item;
    return {.item = &item,
            .target = {.left = Millimetres{left},
                       .top = Millimetres{top},
                       .right = Millimetres{left + width},
                       .bottom = Millimetres{top + height}}};
}

/// A page of keys of many sizes, some of them too near each other.
std::vector<KeyTarget> motley_page() {
    return {key(0, 0, 9.2, 9.2),
            key(9.5, 0, 4.8, 4.8),
            key(14.5, 0.5, 3, 6),
            key(18, 0, 12.6, 8.1),
            key(9.5, 5, 4.8, 4.2),
            key(0, 10, 30, 3)};
}

/// Taps that scatter about an aim, by Box and Muller's formula from a generator whose numbers the C++
/// standard fixes.
class Finger {
public:
    struct Tap {
        double x, y;
    };
    Tap tap(const Target& aimed_at, double scatter) {
        const double radius = scatter * std::sqrt(-2.0 * std::log(1.0 - uniform()));
        const double turn = 2.0 * std::numbers::pi * uniform();
        return {(aimed_at.left.value + aimed_at.right.value) / 2.0 + radius * std::cos(turn),
                (aimed_at.top.value + aimed_at.bottom.value) / 2.0 + radius * std::sin(turn)};
    }

private:
    double uniform() { return static_cast<double>(generator_() >> 11) * 0x1.0p-53; }
    std::mt19937_64 generator_{20040};
};

bool on(const Target& target, const Finger::Tap& tap) {
    return tap.x >= target.left.value && tap.x < target.right.value && tap.y >= target.top.value &&
           tap.y < target.bottom.value;
}

/// Half the width of the interval that holds the share of `trials` with a probability of 99.99 %.
double half_interval(double probability, int trials) {
    return 3.891 * std::sqrt(probability * (1.0 - probability) / trials);
}

}  // namespace

TEST(TapOdds, HitAsOftenAsPublished) {
    struct Row {
        double width, height, share;
        const char* source;
    };
    const Row rows[] = {
        {9, 9, 0.994608, "TCH-24"},
        {9.2, 9.2, 0.995675, "TCH-24"},
        {6.35, 6.35, 0.932599, "TCH-24"},
        {4.8, 4.8, 0.792815, "TCH-24"},
        {3, 3, 0.466065, "TCH-24"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const auto odds = tap_odds({key(5, 7, row.width, row.height)}, usual_scatter);
        EXPECT_NEAR(odds[0].hit, row.share, 1e-5);
        EXPECT_EQ(odds[0].neighbour, 0.0);
        EXPECT_EQ(odds[0].likeliest, nullptr);
    }
}

TEST(TapOdds, FindTheSideForAWantedShare) {
    struct Row {
        double share, side_mm;
    };
    for (const Row& row :
         {Row{0.95, 6.7094}, Row{0.98, 7.7223}, Row{0.99, 8.4187}, Row{0.999, 10.4421}})
        EXPECT_NEAR(side_for_hits(row.share, usual_scatter).value, row.side_mm, 0.001) << "TCH-26";
    EXPECT_NEAR(side_for_hits(0.95, Millimetres{3.0}).value, 2 * 6.7094, 0.002);
    EXPECT_TRUE(std::isfinite(side_for_hits(1.0, usual_scatter).value));
}

TEST(TapOdds, LandOnANeighbourByTheTailOfTheNormal) {
    // A very high key of 3 mm, and another beginning 1.5 mm from its edge: 3 mm from its middle, 2 standard
    // deviations. 1 - F(2) = 0.022750 (normal table); the far edge is 20 deviations away.
    const auto odds = tap_odds({key(0, 0, 3, 60), key(4.5, 0, 27, 60)}, usual_scatter);
    EXPECT_NEAR(odds[0].neighbour, 0.022750, 1e-6);
    EXPECT_NEAR(odds[0].hit, 0.682689, 1e-6) << "TCH-27";
}

TEST(TapOdds, AgreeWithTapsThatAreThrown) {
    const auto keys = motley_page();
    const auto odds = tap_odds(keys, usual_scatter);
    constexpr int taps = 40'000;
    Finger finger;
    for (std::size_t i = 0; i < keys.size(); ++i) {
        SCOPED_TRACE("key " + std::to_string(i));
        int hits = 0, others = 0;
        for (int n = 0; n < taps; ++n) {
            const Finger::Tap tap = finger.tap(keys[i].target, usual_scatter.value);
            for (std::size_t k = 0; k < keys.size(); ++k)
                if (on(keys[k].target, tap)) ++(k == i ? hits : others);
        }
        EXPECT_NEAR(
            static_cast<double>(hits) / taps, odds[i].hit, half_interval(odds[i].hit, taps));
        EXPECT_NEAR(static_cast<double>(others) / taps,
                    odds[i].neighbour,
                    half_interval(odds[i].neighbour, taps));
    }
}

TEST(TapOdds, AgreeWithRoundsThatArePlayed) {
    const auto keys = motley_page();
    const double wrong = round_goes_wrong(tap_odds(keys, usual_scatter));
    constexpr int rounds = 40'000;
    int spoilt = 0;
    Finger finger;
    for (int n = 0; n < rounds; ++n) {
        bool good = true;
        for (const KeyTarget& each : keys)
            good = on(each.target, finger.tap(each.target, usual_scatter.value)) && good;
        spoilt += good ? 0 : 1;
    }
    EXPECT_NEAR(static_cast<double>(spoilt) / rounds, wrong, half_interval(wrong, rounds));
}

TEST(TapOdds, OfAPageWithoutKeysNeverGoWrong) {
    EXPECT_EQ(round_goes_wrong({}), 0.0);
}

TEST(PadReach, IsThatOfABallBesideAStep) {
    struct Row {
        double finger_mm, step_mm, reach_mm;
        const char* by_hand;
    };
    const Row rows[] = {
        {10, 0, 0, "no step"},
        {10, 1, 3, "1 x 9 = 3 x 3"},
        {10, 2, 4, "2 x 8 = 4 x 4"},
        {10, 5, 5, "as high as the radius: its side"},
        {10, 8, 5, "higher: still its side"},
        {13, 4, 6, "4 x 9 = 6 x 6"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.by_hand);
        EXPECT_NEAR(pad_reach(Millimetres{row.finger_mm}, Millimetres{row.step_mm}).value,
                    row.reach_mm,
                    1e-12);
    }
}

}  // namespace dialplate

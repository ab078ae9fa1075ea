#include "sim/check/tap_odds.hpp"

#include "sim/check/sweep.hpp"

#include <cmath>

namespace dialplate {
namespace {

constexpr double reach_in_spreads = 5.0;

/// Where the middle of one target is, seen from the middle of another: how far one has to aim off.
Aim aim_from(const Target& target, const Target& aimed_at) {
    const auto middle = [](Millimetres a, Millimetres b) { return (a + b) * 0.5; };
    return {.across = middle(aimed_at.left, aimed_at.right) - middle(target.left, target.right),
            .down = middle(aimed_at.top, aimed_at.bottom) - middle(target.top, target.bottom)};
}

}  // namespace

std::vector<TapOdds> tap_odds(const std::vector<KeyTarget>& keys, Millimetres scatter) {
    const FingerSpread finger{.across = scatter, .down = scatter};
    std::vector<TapOdds> odds(keys.size());
    std::vector<Box> boxes;  // in hundredths of a millimetre, for the sweep alone
    for (std::size_t i = 0; i < keys.size(); ++i) {
        const Target& target = keys[i].target;
        odds[i].hit = hit_probability(target, finger);
        const auto hundredths = [](Millimetres length) {
            return static_cast<int>(std::lround(length.value * 100.0));
        };
        boxes.push_back({.x = hundredths(target.left),
                         .y = hundredths(target.top),
                         .width = hundredths(target.width()),
                         .height = hundredths(target.height())});
    }
    const int reach = static_cast<int>(std::ceil(reach_in_spreads * scatter.value * 100.0));
    const auto add = [&](std::size_t aimed_at, std::size_t other) {
        TapOdds& of = odds[aimed_at];
        const double share = hit_probability(
            keys[other].target, finger, aim_from(keys[other].target, keys[aimed_at].target));
        of.neighbour += share;
        if (share <= of.on_likeliest) return;
        of.likeliest = keys[other].item;
        of.on_likeliest = share;
    };
    sweep_near(boxes, reach, [&](std::size_t a, std::size_t b) {
        add(a, b);
        add(b, a);
    });
    return odds;
}

double round_goes_wrong(const std::vector<TapOdds>& odds) {
    double all_right = 1.0;
    for (const TapOdds& of : odds)
        all_right *= of.hit;
    return 1.0 - all_right;
}

}  // namespace dialplate

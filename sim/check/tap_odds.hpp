// What becomes of the taps on a page when each key is aimed at in its middle: how often the finger hits it,
// how often it lands on another key.
#pragma once

#include "sim/check/key_targets.hpp"

#include <vector>

namespace dialplate {

/// Of taps aimed at the middle of one key, the shares (0..1) that land ...
struct TapOdds {
    double hit = 0.0;        ///< ... on it.
    double neighbour = 0.0;  ///< ... on any other key of the page.
    const Item* likeliest =
        nullptr;  ///< The neighbour that is hit most often; null: none within reach.
    double on_likeliest = 0.0;
};

/// For each key, in order. Taps scatter as a bivariate normal about the middle of the key; neighbours
/// further away than five standard deviations count as out of reach (under one tap in a million).
/// Source: TCH-24, TCH-25.
std::vector<TapOdds> tap_odds(const std::vector<KeyTarget>& keys, Millimetres scatter);

/// The chance, 0..1, that at least one tap misses its key when every key is tapped once.
double round_goes_wrong(const std::vector<TapOdds>& odds);

}  // namespace dialplate

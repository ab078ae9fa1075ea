// The two states of a lamp or a key that somebody has to tell apart.
#pragma once

#include "sim/layout/layout.hpp"

#include <optional>

namespace dialplate {

/// Tones in both states, and which of them are seen.
struct TwoStates {
    Tones on, off;
    bool has_text = false;
    bool has_edge = false;
    const char* words = "";
};

/// Of a lamp that is lit at a state, and of a key that is active at one; of anything else none.
std::optional<TwoStates> states_of(const Item& item, const Layout& layout);

}  // namespace dialplate

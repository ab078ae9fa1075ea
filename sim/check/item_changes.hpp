// Changes to an item as a finding proposes them for its cure.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <cstdlib>
#include <string>
#include <vector>

namespace dialplate {

/// Whole pixels to the right and down; negative: to the left and up.
struct Way {
    int across = 0, down = 0;
};

/// `2 px to the right and 1 px up`; empty for no way at all.
inline std::string in_words(const Way& way) {
    std::string text;
    if (way.across != 0)
        text += std::to_string(std::abs(way.across)) + " px to the " +
                (way.across > 0 ? "right" : "left");
    if (way.down != 0)
        text += (text.empty() ? "" : " and ") + std::to_string(std::abs(way.down)) + " px " +
                (way.down > 0 ? "down" : "up");
    return text;
}

inline Change moved(const Item& item, const Way& way) {
    return {.kind = Change::Kind::replace,
            .pointer = item.pointer + "/at",
            .value = '[' + std::to_string(item.box.x + way.across) + ", " +
                     std::to_string(item.box.y + way.down) + ']'};
}

/// Gives an item another place and size in whole pixels.
inline std::vector<Change> reshaped(const Item& item, const Box& box) {
    return {moved(item, {.across = box.x - item.box.x, .down = box.y - item.box.y}),
            {.kind = Change::Kind::replace,
             .pointer = item.pointer + "/size",
             .value = '[' + std::to_string(box.width) + ", " + std::to_string(box.height) + ']'}};
}

}  // namespace dialplate

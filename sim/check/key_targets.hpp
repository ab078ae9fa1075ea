// The keys of a page as touch targets, in millimetres.
#pragma once

#include "sim/check/touch_geometry.hpp"
#include "sim/layout/layout.hpp"

#include <vector>

namespace dialplate {

struct KeyTarget {
    const Item* item = nullptr;
    Target target;
};

/// All keys of a page, in the order of its items. A key without an action is a target still.
inline std::vector<KeyTarget> targets_of(const Page& page, const Layout& layout) {
    const Millimetres across = layout.pitch_x(), down = layout.pitch_y();
    std::vector<KeyTarget> keys;
    for (const Item& item : page.items) {
        if (item.kind != ItemKind::key) continue;
        keys.push_back({.item = &item,
                        .target = {.left = across * item.box.x,
                                   .top = down * item.box.y,
                                   .right = across * item.box.right(),
                                   .bottom = down * item.box.bottom()}});
    }
    return keys;
}

/// The size that a finger needs: larger for a key that is tapped several times in a row.
[[nodiscard]] inline bool tapped_in_series(const Key& key) {
    return key.repeat || key.tap.kind == ActionKind::step;
}

}  // namespace dialplate

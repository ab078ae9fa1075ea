// Which boxes of a page are near each other, without looking at every pair.
#pragma once

#include "sim/layout/layout.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>
#include <vector>

namespace dialplate {

/// Calls `meet(a, b)`, indices into `boxes`, once for each pair of which one box, grown by `reach`
/// pixels on every side, overlaps the other; in no set order. Boxes are swept from left to right and
/// only those still open are compared, so the work follows the number of boxes that stand above each
/// other, not the square of all.
template <class Meet>
void sweep_near(const std::vector<Box>& boxes, int reach, Meet meet) {
    std::vector<std::size_t> order(boxes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return boxes[a].x < boxes[b].x;
    });
    std::vector<std::size_t> open;
    for (const std::size_t next : order) {
        const Box& box = boxes[next];
        std::erase_if(open, [&](std::size_t i) { return boxes[i].right() + reach <= box.x; });
        for (const std::size_t i : open) {
            const Box& other = boxes[i];
            if (other.y < box.bottom() + reach && box.y < other.bottom() + reach) meet(i, next);
        }
        open.push_back(next);
    }
}

}  // namespace dialplate

#include "sim/check/sweep.hpp"

#include <gtest/gtest.h>

#include <random>
#include <set>

namespace dialplate {
namespace {

using Pairs = std::multiset<std::pair<std::size_t, std::size_t>>;

/// The slow twin: every pair.
Pairs by_looking_at_all(const std::vector<Box>& boxes, int reach) {
    Pairs pairs;
    for (std::size_t a = 0; a < boxes.size(); ++a) {
        for (std::size_t b = a + 1; b < boxes.size(); ++b) {
            const bool apart =
                boxes[a].right() + reach <= boxes[b].x || boxes[b].right() + reach <= boxes[a].x ||
                boxes[a].bottom() + reach <= boxes[b].y || boxes[b].bottom() + reach <= boxes[a].y;
            if (!apart) pairs.insert({a, b});
        }
    }
    return pairs;
}

Pairs by_sweeping(const std::vector<Box>& boxes, int reach) {
    Pairs pairs;
    sweep_near(
        boxes, reach, [&](std::size_t a, std::size_t b) { pairs.insert(std::minmax(a, b)); });
    return pairs;
}

}  // namespace

TEST(Sweep, MeetsExactlyThePairsThatLookingAtAllFinds) {
    std::mt19937 random(7);
    const auto up_to = [&](int most) { return static_cast<int>(random() % unsigned(most + 1)); };
    for (int round = 0; round < 200; ++round) {
        std::vector<Box> boxes(static_cast<std::size_t>(up_to(40)));
        for (Box& box : boxes)
            box = {.x = up_to(60), .y = up_to(60), .width = 1 + up_to(20), .height = 1 + up_to(20)};
        for (const int reach : {0, 1, 9})
            ASSERT_EQ(by_sweeping(boxes, reach), by_looking_at_all(boxes, reach))
                << "round " << round << ", reach " << reach;
    }
}

TEST(Sweep, LeavesBoxesApartThatOnlyTouch) {
    const std::vector<Box> boxes{{.x = 0, .y = 0, .width = 10, .height = 10},
                                 {.x = 10, .y = 0, .width = 10, .height = 10},
                                 {.x = 0, .y = 10, .width = 10, .height = 10}};
    EXPECT_TRUE(by_sweeping(boxes, 0).empty());
    EXPECT_EQ(by_sweeping(boxes, 1).size(), 3u);
}

}  // namespace dialplate

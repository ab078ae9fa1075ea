#include "sim/desk/grip.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace dialplate {
namespace {

constexpr Circle knob{200.0, 300.0, 100.0};

struct Spot {
    int x, y;
};

/// `part` of a turn to the right of straight up, half way out.
Spot at(double part) {
    const double angle = 2.0 * std::numbers::pi * part;
    return {static_cast<int>(std::floor(knob.x + 80.0 * std::sin(angle))),
            static_cast<int>(std::floor(knob.y - 80.0 * std::cos(angle)))};
}

TEST(Grip, AWholeTurnToTheRightGivesAllDetentsUpwards) {
    Grip grip;
    Spot spot = at(0.0);
    grip.take(knob, spot.x, spot.y);
    int detents = 0;
    // A hair beyond once around, since places are whole pixels.
    for (int step = 1; step <= 205; ++step) {
        spot = at(step / 200.0);
        detents += grip.move(knob, spot.x, spot.y);
    }
    EXPECT_EQ(detents, detents_a_turn);
    EXPECT_NEAR(grip.turned(), 205 / 200.0, 0.01);
}

TEST(Grip, TurnsDownToTheLeftAlsoAcrossTheLowestPoint) {
    Grip grip;
    Spot spot = at(0.55);
    grip.take(knob, spot.x, spot.y);
    // From 0.55 through 0.5, where the angle jumps from one end of its range to the other, to 0.45:
    // a tenth of a turn is 2.4 detents.
    int detents = 0;
    for (int step = 1; step <= 20; ++step) {
        spot = at(0.55 - step * 0.005);
        detents += grip.move(knob, spot.x, spot.y);
    }
    EXPECT_EQ(detents, -2);
}

TEST(Grip, TakingHoldElsewhereDoesNotTurn) {
    Grip grip;
    for (int part = 0; part < 8; ++part) {
        const Spot spot = at(part / 8.0);
        grip.take(knob, spot.x, spot.y);
        EXPECT_EQ(grip.move(knob, spot.x, spot.y), 0);
    }
    EXPECT_EQ(grip.turned(), 0.0);
}

TEST(Grip, PartsOfADetentAddUp) {
    Grip grip;
    EXPECT_EQ(grip.nudge(1.0 / 3), 0);
    EXPECT_EQ(grip.nudge(1.0 / 3), 0);
    EXPECT_EQ(grip.nudge(1.0 / 3), 1);
    EXPECT_EQ(grip.nudge(-0.5), 0);
    EXPECT_EQ(grip.nudge(-0.5), -1);
    EXPECT_EQ(grip.nudge(10.0), 10);
}

}  // namespace
}  // namespace dialplate

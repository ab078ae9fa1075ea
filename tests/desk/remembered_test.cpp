#include "sim/desk/remembered.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

TEST(Remembered, ComesBackAsItWasWritten) {
    Remembered before;
    before.window = {1234, 777};
    before.habits.side_open = false;
    before.habits.grid = {false, true, 8, 2.5};
    before.habits.bus_speed = true;
    before.habits.finger = {7.0, true};
    before.habits.aids.distance_mm = 640;
    before.habits.aids.acuity = 0.5;
    before.habits.sections["TIME"] = true;
    before.habits.screens = {{"left \"27\" 2560x1440", 4.2875}, {"right 1920x1080", 3.61}};
    const Remembered after = remembered_from(written(before));
    EXPECT_EQ(after.window, before.window);
    EXPECT_FALSE(after.habits.side_open);
    EXPECT_FALSE(after.habits.grid.on);
    EXPECT_TRUE(after.habits.grid.in_millimetres);
    EXPECT_EQ(after.habits.grid.pixels, 8);
    EXPECT_EQ(after.habits.grid.millimetres, 2.5);
    EXPECT_TRUE(after.habits.bus_speed);
    EXPECT_EQ(after.habits.finger.millimetres, 7.0);
    EXPECT_TRUE(after.habits.finger.scattered);
    EXPECT_EQ(after.habits.aids, before.habits.aids);
    EXPECT_EQ(after.habits.sections, before.habits.sections);
    EXPECT_EQ(after.habits.screens, before.habits.screens);
}

TEST(Remembered, WhatIsBrokenOrBeyondAllBoundsDoesNoHarm) {
    const std::string whole = written({});
    for (std::size_t length = 0; length < whole.size(); ++length)
        EXPECT_EQ(remembered_from(whole.substr(0, length)).window, WindowSize{}) << length;
    const Remembered wild = remembered_from(
        R"({"finger_mm": 1e9, "grid": -3, "grid_px": -3, "grid_mm": 400, "width": "wide",
                                              "pixels_per_mm": {"a": 0, "b": 1e9, "c": "4", "d": 4}})");
    EXPECT_EQ(wild.habits.screens, (std::map<std::string, double>{{"d", 4.0}}));
    EXPECT_EQ(wild.habits.finger.millimetres, 20.0);
    EXPECT_TRUE(wild.habits.grid.on);
    EXPECT_EQ(wild.habits.grid.pixels, 2);
    EXPECT_EQ(wild.habits.grid.millimetres, 20.0);
    EXPECT_EQ(wild.window.width, 0);
}

}  // namespace
}  // namespace dialplate

// Meters and scales against arithmetic in double.
#include "tests/ui/page.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {

namespace {

/// Pixels of that ink in a row.
int lit(const TestPage& page, const Box& box, std::uint16_t ink) {
    const std::string row = page.drawing({box.x, box.y, box.width, 1}, ink);
    return static_cast<int>(std::count(row.begin(), row.end(), '#'));
}

}  // namespace

TEST(Meter, IsAsLongAsItsValue) {
    TestPage page(
        R"({"kind": "meter", "at": [10, 10], "size": [200, 12], "value": "level", "from": -127, "to": 127, "bar": 12, "ink": "green", "ground": "black", "unlit": "blue"})");
    for (int level = -127; level <= 127; ++level) {
        page.set("level", level);
        const double share = (level + 127) / 254.0;
        // Rounded down to whole pixels.
        ASSERT_EQ(lit(page, {10, 15, 200, 1}, green),
                  static_cast<int>(std::floor(200 * share + 1e-9)))
            << level;
        ASSERT_EQ(lit(page, {10, 15, 200, 1}, green) + lit(page, {10, 15, 200, 1}, blue), 200);
    }
}

TEST(Meter, StandsUprightFromBelow) {
    TestPage page(
        R"({"kind": "meter", "at": [10, 10], "size": [12, 100], "value": "level", "from": 0, "to": 100, "bar": 12, "upright": true, "ink": "green", "ground": "black", "unlit": "blue"})");
    page.set("level", 30);
    EXPECT_EQ(page.at(15, 109), green);
    EXPECT_EQ(page.at(15, 80), green);
    EXPECT_EQ(page.at(15, 79), blue);
    EXPECT_EQ(page.at(15, 10), blue);
}

TEST(Meter, SendsOnlyTheDifference) {
    TestPage page(
        R"({"kind": "meter", "at": [10, 10], "size": [200, 12], "value": "level", "from": 0, "to": 100, "bar": 12, "ink": "green", "ground": "black", "unlit": "blue"})");
    page.set("level", 50);
    page.prototype->set(page.value("level"), 53);
    const Update update = page.prototype->settle();
    EXPECT_EQ(update.sent.windows, 1);
    EXPECT_EQ(update.sent.pixels, 6 * 12);
}

TEST(Meter, LightsWholeBlocksAndChangesPaintBeyondItsLimit) {
    TestPage page(
        R"({"kind": "meter", "at": [10, 10], "size": [119, 12], "value": "level", "from": 0, "to": 120, "bar": 12, "blocks": {"size": 4, "gap": 2}, "ink": "green", "ground": "black", "unlit": "blue", "over": {"from": 60, "ink": "red"}})");
    page.set("level", 120);
    // 20 blocks of 4 px, 2 px between: 118 px
    EXPECT_EQ(lit(page, {10, 15, 119, 1}, green) + lit(page, {10, 15, 119, 1}, red), 20 * 4);
    EXPECT_NEAR(lit(page, {10, 15, 119, 1}, red), 10 * 4, 4);
    page.set("level", 7);
    EXPECT_EQ(lit(page, {10, 15, 119, 1}, green), 4);
    EXPECT_EQ(lit(page, {10, 15, 119, 1}, blue), 19 * 4);
    EXPECT_EQ(page.at(14, 15), black) << "the gap";
}

TEST(Meter, KeepsThePeakForItsTimeThenLetsItFall) {
    TestPage page(
        R"({"kind": "meter", "at": [10, 10], "size": [200, 12], "value": "level", "from": 0, "to": 100, "bar": 12, "ink": "green", "ground": "black", "unlit": "blue", "peak": {"ink": "red", "hold_ms": 1000}})");
    page.set("level", 80);
    page.set("level", 20);
    page.prototype->pass(500);
    EXPECT_EQ(page.at(10 + 158, 15), red);
    EXPECT_EQ(page.at(10 + 159, 15), red);
    EXPECT_EQ(page.at(10 + 157, 15), blue);
    EXPECT_EQ(page.at(10 + 39, 15), green);
    page.prototype->pass(600);
    EXPECT_EQ(lit(page, {10, 15, 200, 1}, red), 0);
    EXPECT_EQ(lit(page, {10, 15, 200, 1}, green), 40);
}

TEST(Scale, PutsTicksAtMultiplesAndThePointerAtTheValue) {
    TestPage page(
        R"({"kind": "scale", "at": [0, 0], "size": [201, 30], "value": "count", "moves": "tape", "per_pixel": 100, "minor": 1000, "major": 10000, "divide": 1000, "minor_tick": 4, "major_tick": 8, "face": "legend", "ink": "white", "ground": "black", "label_ink": "green", "pointer_ink": "red"})");
    for (const std::int32_t value : {50000, 7100000, 7100100, 7103700, 99999900, 0}) {
        page.set("count", value);
        SCOPED_TRACE(value);
        const std::vector<std::uint16_t> glass = page.prototype->glass();
        for (int x = 0; x < 201; ++x) {
            const double units = value + (x - 100) * 100.0;
            const bool pointer = std::abs(x - 100) <= 1;
            const bool minor = std::fmod(units, 1000.0) == 0,
                       major = std::fmod(units, 10000.0) == 0;
            ASSERT_EQ(glass[static_cast<std::size_t>(x)],
                      pointer          ? red
                      : minor || major ? white
                                       : black)
                << x;
            ASSERT_EQ(glass[static_cast<std::size_t>(6 * 240 + x)],
                      pointer ? red
                      : major ? white
                              : black)
                << x;
        }
    }
}

TEST(Scale, MovesItsPointerAndNothingElse) {
    TestPage page(
        R"({"kind": "scale", "at": [0, 0], "size": [200, 30], "value": "count", "moves": "pointer", "per_pixel": 100, "from": 7000000, "minor": 1000, "major": 10000, "divide": 1000, "minor_tick": 4, "major_tick": 8, "face": "legend", "ink": "white", "ground": "black", "label_ink": "green", "pointer_ink": "red"})");
    page.set("count", 7005000);
    EXPECT_EQ(page.at(50, 5), red);
    page.prototype->set(page.value("count"), 7005100);
    const Update update = page.prototype->settle();
    EXPECT_EQ(page.at(51, 5), red);
    EXPECT_EQ(update.sent.windows, 2) << "the column it leaves and the one it enters";
    page.set("count", 0);
    EXPECT_EQ(lit(page, {0, 5, 200, 1}, red), 0) << "off the scale";
}

TEST(Segments, LightTheBarsOfEveryDigit) {
    TestPage page(
        R"({"kind": "readout", "at": [0, 0], "size": [40, 50], "face": "lit", "ink": "white", "ground": "black", "value": "count", "groups": [1], "align": "left"})");
    // Bars from the shapes of the digits: top, upper right, lower right, bottom, lower left, upper left, middle.
    const char* bars[] = {"1111110",
                          "0110000",
                          "1101101",
                          "1111001",
                          "0110011",
                          "1011011",
                          "1011111",
                          "1110000",
                          "1111111",
                          "1111011"};
    const int probe[7][2] = {{10, 2}, {17, 10}, {17, 30}, {10, 37}, {2, 30}, {2, 10}, {10, 19}};
    for (int digit = 0; digit <= 9; ++digit) {
        page.set("count", digit);
        for (int bar = 0; bar < 7; ++bar) {
            const int top = (50 - 40) / 2;
            EXPECT_EQ(page.at(probe[bar][0], top + probe[bar][1]) == white, bars[digit][bar] == '1')
                << digit << " bar " << bar;
        }
    }
}

}  // namespace dialplate

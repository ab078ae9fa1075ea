// Fingers on the simulated sheets, read by the firmware of ui/mcu.
#include "sim/display/controller.hpp"
#include "sim/prove/touch_chip.hpp"
#include "sim/prove/touch_wires.hpp"
#include "tests/prove/bench.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {
namespace {

struct Point {
    int x, y;
};

/// A sheet that was glued on a little askew, its y axis upside down: counts of a glass pixel.
struct Sheet {
    [[nodiscard]] double x(Point p) const { return 310.0 + 10.9 * p.x + 0.21 * p.y; }
    [[nodiscard]] double y(Point p) const { return 3790.0 - 0.17 * p.x - 14.3 * p.y; }
};

void append_word(std::vector<std::uint8_t>& bytes, int word) {
    bytes.push_back(static_cast<std::uint8_t>(word & 0xFF));
    bytes.push_back(static_cast<std::uint8_t>(word >> 8 & 0xFF));
}

int word(const std::vector<std::uint8_t>& bytes, std::size_t at) {
    return static_cast<std::int16_t>(bytes[at] | bytes[at + 1] << 8);
}

struct Landed {
    std::vector<Point> told;
    std::vector<std::uint16_t> glass;
    BusFaults faults;
    std::vector<CycleCount> to_read, to_pixels;
    std::size_t false_ones = 0;
};

const std::vector<Point> taps = {{20, 20}, {300, 20}, {300, 220}, {20, 220}, {160, 120}, {77, 181}};

Landed tap_all(const TouchSheet& properties) {
    const Display display = display_named("2.8in-ILI9341");
    auto board = board_with(firmware("touch"), BoardOptions{});
    Controller controller(display);
    board->observe_bus([&controller](bool command, std::uint8_t byte) {
        if (command) {
            controller.command(byte);
        } else {
            controller.data(byte);
        }
    });
    TouchChip chip(*board, TouchWiring{}, properties);
    const Sheet sheet;
    std::vector<std::uint8_t> samples;
    for (Point target : {Point{32, 24}, Point{288, 120}, Point{160, 216}}) {
        append_word(samples, static_cast<int>(std::lround(sheet.x(target))));
        append_word(samples, static_cast<int>(std::lround(sheet.y(target))));
        append_word(samples, target.x);
        append_word(samples, target.y);
    }
    board->feed(samples);
    EXPECT_EQ(board->run_until_mark(start_up), Stop::mark);
    EXPECT_EQ(board->told(), std::vector<std::uint8_t>{1}) << "calibrated";

    Landed landed;
    for (const Point& tap : taps) {
        EXPECT_EQ(board->run_until_mark(200'000), Stop::cycles) << "nothing happens untouched";
        const CycleCount down = board->cycles();
        chip.press(sheet.x(tap), sheet.y(tap));
        EXPECT_EQ(board->run_until_mark(1'000'000), Stop::mark);
        landed.to_read.push_back(board->cycles() - down);
        EXPECT_EQ(board->run_until_mark(1'000'000), Stop::mark);
        landed.to_pixels.push_back(board->cycles() - down);
        // Held: no second reading before the finger lifts.
        EXPECT_EQ(board->run_until_mark(400'000), Stop::cycles);
        chip.lift();
        EXPECT_EQ(board->run_until_mark(100'000), Stop::mark);
        const auto told = board->told();
        if (told.size() != 4) {
            ++landed.false_ones;
            continue;
        }
        landed.told.push_back({word(told, 0), word(told, 2)});
    }
    landed.glass = controller.glass(90);
    landed.faults = board->faults();
    return landed;
}

TEST(SerialTouch, LandsSixOfSixTapsOnTheIntendedPixel) {
    const Landed landed = tap_all(TouchSheet{});
    ASSERT_EQ(landed.told.size(), taps.size());
    EXPECT_EQ(landed.false_ones, 0u);
    for (std::size_t i = 0; i < taps.size(); ++i) {
        EXPECT_EQ(landed.told[i].x, taps[i].x) << i;
        EXPECT_EQ(landed.told[i].y, taps[i].y) << i;
    }
    std::size_t red = 0;
    for (std::uint16_t pixel : landed.glass)
        red += pixel == 0xF800 ? 1 : 0;
    EXPECT_EQ(red, 6u * 16);
    for (const Point& tap : taps) {
        EXPECT_EQ(landed.glass[static_cast<std::size_t>(tap.y * 320 + tap.x)], 0xF800);
        EXPECT_EQ(landed.glass[static_cast<std::size_t>((tap.y - 2) * 320 + tap.x - 2)], 0xF800);
        EXPECT_EQ(landed.glass[static_cast<std::size_t>((tap.y + 1) * 320 + tap.x + 1)], 0xF800);
        EXPECT_EQ(landed.glass[static_cast<std::size_t>((tap.y + 2) * 320 + tap.x)], 0x0000);
    }
    EXPECT_EQ(landed.faults.total(), 0);
}

TEST(SerialTouch, StaysWithinAPixelUnderNoiseAndWithASheetThatHasNotSettled) {
    TouchSheet rough;
    rough.noise = 8.0;       // Standards RES-13, the upper end.
    rough.unsettled = 0.05;  // Of up to 3500 counts: the discarded sample is off by 13 pixels.
    rough.seed = 20251125;
    const Landed landed = tap_all(rough);
    ASSERT_EQ(landed.told.size(), taps.size());
    for (std::size_t i = 0; i < taps.size(); ++i) {
        // The mean of the middle three of five has a standard deviation of about 0.46 of one sample:
        // 3.7 counts, 0.34 px across; three of them are 1.0, and rounding adds a half.
        EXPECT_NEAR(landed.told[i].x, taps[i].x, 2) << i;
        EXPECT_NEAR(landed.told[i].y, taps[i].y, 2) << i;
    }
}

TEST(SerialTouch, IgnoresAPressTooFaintToTrust) {
    auto board = board_with(firmware("touch"), BoardOptions{});
    TouchSheet faint;
    faint.contact_ohm = 4000.0;
    TouchChip chip(*board, TouchWiring{}, faint);
    std::vector<std::uint8_t> samples;
    for (Point p : {Point{0, 0}, Point{100, 0}, Point{0, 100}}) {
        for (int value : {p.x * 10, p.y * 10, p.x, p.y})
            append_word(samples, value);
    }
    board->feed(samples);
    EXPECT_EQ(board->run_until_mark(start_up), Stop::mark);
    chip.press(2000, 2000);
    EXPECT_EQ(board->run_until_mark(1'000'000), Stop::cycles);
    EXPECT_GT(chip.conversions(), 14) << "it was measured, and refused";
}

TEST(WiredTouch, ReadsBothAxesAndPutsThePinsBack) {
    auto board = board_with(firmware("touch_wires"), BoardOptions{});
    WiredSheet sheet(*board, TouchWires{});
    struct Row {
        double x, y;
    };
    for (const Row& row : {Row{0.5, 0.5}, Row{0.1, 0.9}, Row{0.93, 0.07}, Row{0.25, 0.31}}) {
        sheet.press(row.x, row.y);
        board->feed({1});
        board->run_for(600'000);
        const auto told = board->told();
        ASSERT_EQ(told.size(), 7u);
        EXPECT_EQ(told[0], 1);
        // Standards RES-01: 1023 times the share; millivolts and two roundings make it one count.
        EXPECT_NEAR(word(told, 1), 1023 * row.x, 1.5);
        EXPECT_NEAR(word(told, 3), 1023 * row.y, 1.5);
        EXPECT_EQ(told[5], 0x0A) << "directions";
        EXPECT_EQ(told[6], 0x05) << "levels";
    }
    sheet.lift();
    board->feed({1});
    board->run_for(600'000);
    const auto told = board->told();
    ASSERT_EQ(told.size(), 7u);
    EXPECT_EQ(told[0], 0);
    EXPECT_EQ(told[5], 0x0A);
}

}  // namespace
}  // namespace dialplate

#include "sim/display/wire.hpp"

#include "tests/display/display_fixture.hpp"

#include <gtest/gtest.h>

#include <cstdio>
#include <random>
#include <string>

namespace dialplate {
namespace {

/// The bytes on the bus as text, commands in brackets.
class Listener {
public:
    explicit Listener(Wire& wire) {
        wire.observe([this](bool is_command, std::uint8_t byte) {
            char text[8];
            std::snprintf(text, sizeof text, is_command ? "[%02X]" : " %02X", byte);
            heard += text;
        });
    }
    std::string heard;
};

TEST(Wire, StartsTheControllerUp) {
    struct Row {
        bool inverted;
        int bytes_per_pixel;
        BusKind bus;
        const char* expected;
    };
    // standards BUS-01, BUS-03, BUS-09; 28 is the address mode of turn 90.
    const Row rows[] = {
        {false, 2, BusKind::spi, "[01][11][3A] 55[36] 28[29]"},
        {true, 2, BusKind::usart_spi, "[01][11][3A] 55[36] 28[21][29]"},
        {false, 3, BusKind::spi, "[01][11][3A] 66[36] 28[29]"},
        {false, 3, BusKind::parallel8, "[01][11][3A] 55[36] 28[29]"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.expected);
        Display display = turned_display(8, 8);
        display.inverted = row.inverted;
        display.bytes_per_pixel = row.bytes_per_pixel;
        Controller controller(display, row.bus);
        Wire wire(controller, display, 90, row.bus);
        const Listener listener(wire);
        wire.start();
        EXPECT_EQ(listener.heard, row.expected);
        EXPECT_TRUE(controller.on());
        EXPECT_EQ(controller.address_mode(), 0x28);
    }
}

TEST(Wire, SendsAWindowInElevenBytes) {
    Display display = turned_display(240, 320);
    Controller controller(display);
    Wire wire(controller, display, 90);
    wire.start();
    const Listener listener(wire);
    const std::int64_t before = controller.counters().bytes;
    wire.window(0, 16, 320, 24);
    // standards BUS-04: x 0..319 -> 2A 00 00 01 3F
    EXPECT_EQ(listener.heard, "[2A] 00 00 01 3F[2B] 00 10 00 27[2C]");
    EXPECT_EQ(controller.counters().bytes - before, 11);
}

TEST(Wire, AddsTheOffsetsOfTheTurn) {
    Display display = turned_display(240, 240);
    display.memory_height = 320;
    display.turns[2] = {.address_mode = 0xC0, .column_offset = 2, .page_offset = 80};
    Controller controller(display);
    Wire wire(controller, display, 180);
    const Listener listener(wire);
    wire.window(3, 4, 1, 1);
    EXPECT_EQ(listener.heard, "[2A] 00 05 00 05[2B] 00 54 00 54[2C]");
}

TEST(Wire, SendsTheHighByteFirst) {
    const Display display = turned_display(8, 8);
    Controller controller(display);
    Wire wire(controller, display, 0);
    wire.start();
    wire.window(0, 0, 2, 1);
    const Listener listener(wire);
    wire.push(0xFD20, 2);
    EXPECT_EQ(listener.heard, " FD 20 FD 20");  // standards BUS-20
}

TEST(Wire, TellsAnObserverNothingMoreOnceItIsGone) {
    const Display display = turned_display(8, 8);
    Controller controller(display);
    Wire wire(controller, display, 0);
    const Listener listener(wire);
    wire.observe({});
    wire.start();
    EXPECT_EQ(listener.heard, "");
}

TEST(Wire, SendsTheSameToTheControllerWithAndWithoutAnObserver) {
    for (const int bytes_per_pixel : {2, 3}) {
        SCOPED_TRACE(bytes_per_pixel);
        Display display = turned_display(11, 17);
        display.bytes_per_pixel = bytes_per_pixel;
        Controller quick(display), heard(display);
        Wire quick_wire(quick, display, 270), heard_wire(heard, display, 270);
        std::int64_t bytes = 0;
        heard_wire.observe([&](bool, std::uint8_t) { ++bytes; });
        std::mt19937 random(7);
        quick_wire.start();
        heard_wire.start();
        for (int i = 0; i < 200; ++i) {
            const auto x = static_cast<std::uint16_t>(random() % 17);
            const auto y = static_cast<std::uint16_t>(random() % 11);
            const auto width = static_cast<std::uint16_t>(1 + random() % (17u - x));
            const auto height = static_cast<std::uint16_t>(1 + random() % (11u - y));
            const auto colour = static_cast<std::uint16_t>(random());
            for (Wire* wire : {&quick_wire, &heard_wire}) {
                wire->window(x, y, width, height);
                wire->push(colour, static_cast<std::uint16_t>(width * height));
            }
        }
        EXPECT_EQ(quick.glass(270), heard.glass(270));
        EXPECT_EQ(quick.counters(), heard.counters());
        EXPECT_EQ(bytes, heard.counters().bytes);
        EXPECT_EQ(quick.counters().bad_windows, 0);
        EXPECT_EQ(quick.counters().short_windows, 0);
    }
}

TEST(Wire, NeedsTheseBytesForAFullScreen) {
    struct Row {
        int width, height, bytes_per_pixel, bytes;
        const char* source;
    };
    const Row rows[] = {
        {240, 320, 2, 153'600, "standards BUS-14"},
        {320, 480, 3, 460'800, "standards BUS-09"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Display display = turned_display(row.width, row.height);
        display.bytes_per_pixel = row.bytes_per_pixel;
        Controller controller(display);
        Wire wire(controller, display, 0);
        wire.start();
        wire.window(
            0, 0, static_cast<std::uint16_t>(row.width), static_cast<std::uint16_t>(row.height));
        const std::int64_t before = controller.counters().bytes;
        for (int y = 0; y < row.height; ++y)
            wire.push(0x8410, static_cast<std::uint16_t>(row.width));
        EXPECT_EQ(controller.counters().bytes - before, row.bytes);
    }
}

TEST(Wire, ShowsGarbageRatherThanHideAMissingStart) {
    const Display display = turned_display(4, 4);
    Controller controller(display);
    Wire wire(controller, display, 0);
    wire.window(0, 0, 2, 1);
    wire.push(0xFFFF, 2);  // Four bytes: one 18-bit pixel and a third of another.
    EXPECT_EQ(controller.counters().pixels, 1);
    EXPECT_EQ(controller.glass(0), std::vector<std::uint16_t>(16, 0)) << "and it is still asleep";
}

}  // namespace
}  // namespace dialplate

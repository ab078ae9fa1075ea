#include "sim/display/controller.hpp"

#include "sim/display/dcs.hpp"
#include "tests/display/display_fixture.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

TEST(Controller, KnowsTheCommandsOfTheDisplayCommandSet) {
    struct Row {
        std::uint8_t code;
        int published;
        int parameters;
        const char* name;
    };
    // standards BUS-01 (MIPI DCS, codes); parameter counts from memory.
    const Row rows[] = {
        {dcs::nop, 0x00, 0, "nop"},
        {dcs::soft_reset, 0x01, 0, "soft_reset"},
        {dcs::exit_sleep_mode, 0x11, 0, "exit_sleep_mode"},
        {dcs::enter_invert_mode, 0x21, 0, "enter_invert_mode"},
        {dcs::set_display_off, 0x28, 0, "set_display_off"},
        {dcs::set_display_on, 0x29, 0, "set_display_on"},
        {dcs::set_column_address, 0x2A, 4, "set_column_address"},
        {dcs::set_page_address, 0x2B, 4, "set_page_address"},
        {dcs::write_memory_start, 0x2C, 0, "write_memory_start"},
        {dcs::read_memory_start, 0x2E, 0, "read_memory_start"},
        {dcs::set_partial_rows, 0x30, 4, "set_partial_rows"},
        {dcs::set_scroll_area, 0x33, 6, "set_scroll_area"},
        {dcs::set_address_mode, 0x36, 1, "set_address_mode"},
        {dcs::set_scroll_start, 0x37, 2, "set_scroll_start"},
        {dcs::set_pixel_format, 0x3A, 1, "set_pixel_format"},
        {dcs::write_memory_continue, 0x3C, 0, "write_memory_continue"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.name);
        EXPECT_EQ(row.code, row.published);
        Controller controller(plain_display(8, 8));
        controller.command(row.code);
        // 0x55 is a pixel format, so that the parameter is one that the model knows.
        for (int i = 0; i < row.parameters; ++i)
            controller.data(0x55);
        EXPECT_EQ(controller.counters().unknown_commands, 0);
        EXPECT_EQ(controller.counters().stray_parameters, 0);
        if (row.code == dcs::write_memory_start || row.code == dcs::write_memory_continue) continue;
        controller.data(0);
        EXPECT_EQ(controller.counters().stray_parameters, 1) << "one parameter too many";
        EXPECT_EQ(controller.counters().bytes, 2 + row.parameters);
    }
}

TEST(Controller, CountsMakersCommandsAsUnknownAndSwallowsTheirParameters) {
    Controller controller(plain_display(8, 8));
    send(controller, 0xB1, {0, 0x1B});
    send(controller, 0xE0, {1, 2, 3});
    EXPECT_EQ(controller.counters().unknown_commands, 2);
    EXPECT_EQ(controller.counters().stray_parameters, 0);
}

// The memory is seen through a display whose plain address mode is right for turn 0.
TEST(Controller, WalksThroughTheMemoryAsTheAddressModeSays) {
    constexpr int width = 6, height = 9;
    struct Row {
        int mode;
        MemoryPixel expected;  // Of column 2, page 1.
    };
    // ST7735R data sheet V0.2, 9.11, with 5 and 8 for its 127 and 159. standards BUS-02 for the bits.
    const Row rows[] = {
        {0x00, {2, 1}},          // column direct, page direct
        {0x80, {2, 8 - 1}},      // MY: page mirrored
        {0x40, {5 - 2, 1}},      // MX: column mirrored
        {0xC0, {5 - 2, 8 - 1}},  // MX MY
        {0x20, {1, 2}},          // MV: the column address goes to the physical row
        {0xA0, {1, 8 - 2}},      // MV MY: ... mirrored
        {0x60, {5 - 1, 2}},      // MV MX: the page address goes to the mirrored physical column
        {0xE0, {5 - 1, 8 - 2}},  // MV MX MY
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.mode);
        Controller controller(plain_display(width, height));
        wake(controller, static_cast<std::uint8_t>(row.mode));
        dot(controller, 2, 1, 0xFFFF);
        EXPECT_EQ(lit_pixel(controller.glass(0), width), row.expected);
        EXPECT_EQ(controller.counters().bad_windows, 0);
    }
}

TEST(Controller, FillsAWindowRowByRow) {
    Controller controller(plain_display(4, 3));
    wake(controller, 0x00);
    open(controller, 1, 2, 0, 2);
    for (int i = 1; i <= 6; ++i) {
        if (i % 2 == 0) controller.command(dcs::write_memory_continue);
        controller.data(0);
        controller.data(static_cast<std::uint8_t>(i));
    }
    EXPECT_EQ(controller.glass(0),
              (std::vector<std::uint16_t>{0,
                                          1,
                                          2,
                                          0,  //
                                          0,
                                          3,
                                          4,
                                          0,  //
                                          0,
                                          5,
                                          6,
                                          0}));
}

TEST(Controller, ShowsAWindowWhereTheReaderExpectsItInAllTurns) {
    const Display display = turned_display(6, 9);
    for (const int turn : {0, 90, 180, 270}) {
        SCOPED_TRACE(turn);
        Controller controller(display);
        wake(controller, display.turns[static_cast<std::size_t>(turn / 90)].address_mode);
        dot(controller, 4, 1, 0x1234);
        const int width = turn % 180 == 0 ? 6 : 9;
        EXPECT_EQ(lit_pixel(controller.glass(turn), width), (MemoryPixel{4, 1}));
        EXPECT_EQ(controller.glass(turn)[static_cast<std::size_t>(1 * width + 4)], 0x1234);
    }
}

TEST(Controller, ShowsAMirroredPictureWhenTheDriverForgetsAMirror) {
    const Display display = turned_display(6, 9);
    Controller controller(display);
    wake(controller, 0x08);  // 0x48 without MX.
    dot(controller, 1, 2, 0xFFFF);
    EXPECT_EQ(lit_pixel(controller.glass(0), 6), (MemoryPixel{5 - 1, 2}));
}

TEST(Controller, ShowsAPictureOfAnotherTurnTurned) {
    const Display display = turned_display(6, 9);
    Controller controller(display);
    wake(controller, 0x88);  // The mode of turn 180, looked at with the module mounted for 0.
    dot(controller, 1, 2, 0xFFFF);
    EXPECT_EQ(lit_pixel(controller.glass(0), 6), (MemoryPixel{5 - 1, 8 - 2}));
}

TEST(Controller, PlacesSmallGlassInLargerMemory) {
    Display display = plain_display(4, 4);
    display.memory_width = 8;
    display.memory_height = 10;
    display.turns[0] = {.address_mode = 0xC0, .column_offset = 3, .page_offset = 5};
    Controller controller(display);
    wake(controller, 0xC0);
    dot(controller, 3 + 2, 5 + 1, 0xFFFF);
    EXPECT_EQ(lit_pixel(controller.glass(0), 4), (MemoryPixel{2, 1}));
    dot(controller, 3 + 2, 5 + 1, 0);
    dot(controller, 2, 5, 0xFFFF);  // One column beside the glass.
    EXPECT_EQ(lit_pixel(controller.glass(0), 4), (MemoryPixel{-1, -1}));
    EXPECT_EQ(controller.counters().bad_windows, 0) << "beside the glass, but in the memory";
}

TEST(Controller, SwapsRedAndBlueWhenTheColourOrderIsWrong) {
    const Display display = turned_display(2, 2);
    Controller controller(display);
    wake(controller, 0x40);  // 0x48 without BGR.
    dot(controller, 0, 0, 0xF800);
    EXPECT_EQ(controller.glass(0)[0], 0x001F) << "red shows as blue";
    dot(controller, 0, 0, 0x07E0);
    EXPECT_EQ(controller.glass(0)[0], 0x07E0) << "green stays";
}

TEST(Controller, ShowsTheNegativeWhenInversionIsWrong) {
    for (const bool needs_inversion : {false, true}) {
        Display display = plain_display(1, 1);
        display.inverted = needs_inversion;
        Controller controller(display);
        wake(controller, 0);
        dot(controller, 0, 0, 0xF81F);
        EXPECT_EQ(controller.glass(0)[0], needs_inversion ? 0x07E0 : 0xF81F);
        send(controller, dcs::enter_invert_mode);
        EXPECT_EQ(controller.glass(0)[0], needs_inversion ? 0xF81F : 0x07E0);
        send(controller, dcs::exit_invert_mode);
        EXPECT_EQ(controller.glass(0)[0], needs_inversion ? 0x07E0 : 0xF81F);
    }
}

TEST(Controller, IsBlackUntilAwakeAndOnAndKeepsItsPicture) {
    Controller controller(plain_display(1, 1));
    send(controller, 0x3A, {0x55});
    dot(controller, 0, 0, 0xFFFF);
    EXPECT_EQ(controller.glass(0)[0], 0);
    send(controller, dcs::set_display_on);
    EXPECT_EQ(controller.glass(0)[0], 0) << "still asleep";
    EXPECT_FALSE(controller.on());
    send(controller, dcs::exit_sleep_mode);
    EXPECT_EQ(controller.glass(0)[0], 0xFFFF);
    EXPECT_TRUE(controller.on());
    send(controller, dcs::set_display_off);
    EXPECT_EQ(controller.glass(0)[0], 0);
    send(controller, dcs::set_display_on);
    EXPECT_EQ(controller.glass(0)[0], 0xFFFF);
    send(controller, dcs::enter_sleep_mode);
    EXPECT_EQ(controller.glass(0)[0], 0);
    send(controller, dcs::soft_reset);
    wake(controller, 0);
    EXPECT_EQ(controller.glass(0)[0], 0xFFFF) << "a reset leaves the memory";
}

TEST(Controller, TakesThreeBytesAPixelInEighteenBitFormat) {
    Controller controller(plain_display(2, 1));
    wake(controller, 0);
    send(controller, 0x3A, {0x66});  // standards BUS-03
    open(controller, 0, 1, 0, 0);
    for (const int byte : {0xFC, 0x00, 0x00, 0x04, 0x80, 0xFC}) {
        controller.data(static_cast<std::uint8_t>(byte));
    }
    EXPECT_EQ(controller.counters().pixels, 2);
    EXPECT_EQ(controller.glass(0)[0], 0xF800);
    // Red 1 of 63 is below the first of 31 steps; green 32 of 63; blue full.
    EXPECT_EQ(controller.glass(0)[1], (32 << 5) | 31);
}

TEST(Controller, ReadsEighteenBitPixelsUntilItIsToldOtherwise) {
    EXPECT_EQ(Controller(plain_display(1, 1)).bytes_per_pixel(), 3);
}

TEST(Controller, RefusesSixteenBitPixelsWhereTheSerialBusLacksThem) {
    Display display = plain_display(4, 1);  // As an ILI9488: standards BUS-09.
    display.bytes_per_pixel = 3;
    Controller serial(display, BusKind::spi);
    send(serial, 0x3A, {0x55});
    EXPECT_EQ(serial.bytes_per_pixel(), 3);
    EXPECT_EQ(serial.counters().unknown_commands, 1);
    Controller parallel(display, BusKind::parallel8);
    send(parallel, 0x3A, {0x55});
    EXPECT_EQ(parallel.bytes_per_pixel(), 2);
    EXPECT_EQ(parallel.counters().unknown_commands, 0);
}

TEST(Controller, CountsBadWindows) {
    struct Row {
        int mode, left, right, top, bottom, bad;
        const char* why;
    };
    const Row rows[] = {
        {0x00, 0, 5, 0, 8, 0, "the whole memory"},
        {0x00, 3, 2, 0, 0, 1, "start after end"},
        {0x00, 0, 0, 4, 3, 1, "start after end, pages"},
        {0x00, 0, 6, 0, 0, 1, "one column too many"},
        {0x00, 0, 0, 9, 9, 1, "below the last page"},
        {0x20, 0, 8, 0, 5, 0, "exchanged: nine columns"},
        {0x20, 0, 0, 0, 6, 1, "exchanged: one page too many"},
        {0x00, 0, 0xFFFF, 0, 0xFFFF, 1, "as large as can be said"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.why);
        Controller controller(plain_display(6, 9));
        wake(controller, static_cast<std::uint8_t>(row.mode));
        open(controller, row.left, row.right, row.top, row.bottom);
        controller.data(0xFF);
        controller.data(0xFF);
        EXPECT_EQ(controller.counters().bad_windows, row.bad);
        EXPECT_EQ(controller.counters().windows, 1);
        EXPECT_EQ(controller.counters().pixels, 1);
    }
}

TEST(Controller, IgnoresPixelsOutsideTheMemory) {
    Controller controller(plain_display(3, 1));
    wake(controller, 0);
    open(controller, 2, 4, 0, 1);
    for (int i = 1; i <= 6; ++i) {
        controller.data(0);
        controller.data(static_cast<std::uint8_t>(i));
    }
    EXPECT_EQ(controller.glass(0), (std::vector<std::uint16_t>{0, 0, 1}));
}

TEST(Controller, StartsAgainAtTheBeginningPastTheEndOfAWindow) {
    Controller controller(plain_display(3, 1));
    wake(controller, 0);
    open(controller, 0, 1, 0, 0);
    for (int i = 1; i <= 3; ++i) {
        controller.data(0);
        controller.data(static_cast<std::uint8_t>(i));
    }
    EXPECT_EQ(controller.glass(0), (std::vector<std::uint16_t>{3, 2, 0}));
    EXPECT_EQ(controller.counters().bad_windows, 1);
    controller.data(0);
    controller.data(4);
    EXPECT_EQ(controller.counters().bad_windows, 1) << "once for each write";
}

TEST(Controller, CountsWindowsThatWereLeftBeforeTheyWereFull) {
    Controller controller(plain_display(2, 2));
    wake(controller, 0);
    open(controller, 0, 1, 0, 1);
    for (int i = 0; i < 6; ++i)
        controller.data(0);
    send(controller, dcs::nop);
    send(controller, dcs::write_memory_continue, {0, 0});
    open(controller, 0, 0, 0, 0);
    EXPECT_EQ(controller.counters().short_windows, 0) << "interrupted, then filled";
    open(controller, 0, 0, 0, 0);
    EXPECT_EQ(controller.counters().short_windows, 1);
}

TEST(Controller, CountsAWindowWhoseEndsWereHalfSet) {
    Controller controller(plain_display(8, 8));
    wake(controller, 0);
    send(controller, dcs::set_column_address, {0, 1, 0});
    send(controller, dcs::write_memory_start);
    EXPECT_EQ(controller.counters().bad_windows, 1);
}

TEST(Controller, CountsHalfPixelsAsStray) {
    Controller controller(plain_display(2, 2));
    wake(controller, 0);
    open(controller, 0, 1, 0, 1);
    for (int i = 0; i < 3; ++i)
        controller.data(0xFF);
    send(controller, dcs::nop);
    EXPECT_EQ(controller.counters().pixels, 1);
    EXPECT_EQ(controller.counters().stray_parameters, 1);
}

TEST(Controller, CountsPixelsWrittenTwiceWithinOneUpdate) {
    const Display display = turned_display(4, 4);
    for (const int turn : {0, 90}) {  // Along rows of the memory, and across them.
        SCOPED_TRACE(turn);
        Controller controller(display);
        wake(controller, display.turns[static_cast<std::size_t>(turn / 90)].address_mode);
        open(controller, 0, 1, 0, 1);
        controller.pixels(1, 4);
        EXPECT_EQ(controller.counters().pixels_twice, 0);
        open(controller, 1, 2, 1, 2);
        controller.pixels(2, 4);
        EXPECT_EQ(controller.counters().pixels_twice, 1);
        controller.begin_update();
        open(controller, 0, 3, 0, 3);
        controller.pixels(3, 16);
        EXPECT_EQ(controller.counters().pixels_twice, 1);
    }
}

TEST(Controller, TellsTheWindowsOfAnUpdateInTheReadersCoordinates) {
    Display display = turned_display(6, 9);
    display.memory_height = 12;
    // MX, and MX MY MV, of glass in the upper nine pages of twelve; offsets by hand.
    display.turns[2].page_offset = 3;
    display.turns[3].column_offset = 3;
    for (const int turn : {0, 90, 180, 270}) {
        SCOPED_TRACE(turn);
        const TurnMode& mode = display.turns[static_cast<std::size_t>(turn / 90)];
        Controller controller(display);
        wake(controller, mode.address_mode);
        const int column = mode.column_offset, page = mode.page_offset;
        open(controller, column + 1, column + 3, page + 2, page + 3);
        controller.pixels(7, 6);
        open(controller, column, column, page, page);
        controller.pixels(7, 1);
        const auto windows = controller.take_windows(turn);
        ASSERT_EQ(windows.size(), 2u);
        EXPECT_EQ(windows[0].box, (Box{1, 2, 3, 2}));
        EXPECT_EQ(windows[0].pixels, 6);
        EXPECT_EQ(windows[1].box, (Box{0, 0, 1, 1}));
        EXPECT_TRUE(controller.take_windows(turn).empty()) << "taken";
        open(controller, 0, 0, 0, 0);
        controller.begin_update();
        EXPECT_TRUE(controller.take_windows(turn).empty()) << "of the update before";
    }
}

TEST(Controller, SubtractsCounters) {
    Controller controller(plain_display(4, 4));
    wake(controller, 0);
    const BusCounters before = controller.counters();
    dot(controller, 1, 1, 5);
    const BusCounters sent = controller.counters() - before;
    EXPECT_EQ(sent, (BusCounters{.bytes = 13, .windows = 1, .pixels = 1}));
}

}  // namespace
}  // namespace dialplate

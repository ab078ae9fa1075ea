// Every driver of ui/mcu, compiled for an ATmega328P and run, against the bytes that the PC sends for the
// same windows and runs.
#include "sim/display/controller.hpp"
#include "sim/display/wire.hpp"
#include "tests/prove/bench.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <ostream>
#include <random>
#include <set>
#include <string>
#include <vector>

namespace dialplate {
namespace {

/// A link of tests/firmware/bench/display.hpp and the bus it needs.
struct Driver {
    const char* link;
    BusKind bus;
};

void PrintTo(const Driver& driver, std::ostream* out) {
    *out << driver.link;
}

constexpr Driver drivers[] = {
    {"polled", BusKind::spi},
    {"polled_by_four", BusKind::spi},
    {"timed", BusKind::spi_timed},
    {"usart", BusKind::usart_spi},
    {"parallel", BusKind::parallel8},
    {"split", BusKind::parallel8},
};

DisplayWiring wiring_of(const Driver& driver, const std::string& mcu = "atmega328p") {
    DisplayWiring wiring;
    wiring.bus = driver.bus;
    if (mcu == "atmega2560") {
        wiring.data_or_command = {'H', 5};
        wiring.select = PinPlace{'H', 6};
        wiring.write = {'G', 0};
        for (PinPlace& line : wiring.data)
            line.port = 'L';
        return wiring;
    }
    if (std::string(driver.link) == "split") {
        wiring.write = {'C', 1};
        wiring.data_or_command = {'C', 2};
        wiring.select = PinPlace{'C', 3};
        wiring.data[0] = {'B', 0};
        wiring.data[1] = {'B', 1};
    }
    return wiring;
}

/// The part's name as ui/mcu/controllers.hpp spells its type.
std::string controller_type(const std::string& part) {
    std::string name = part;
    for (std::size_t i = 1; i < name.size(); ++i) {
        name[i] = static_cast<char>(std::tolower(static_cast<unsigned char>(name[i])));
    }
    return name;
}

std::vector<std::string> definitions(const Driver& driver, const Display& display, int turn) {
    const TurnMode& mode = display.turns[static_cast<std::size_t>(turn / 90)];
    const int bytes = driver.bus == BusKind::parallel8 ? 2 : display.bytes_per_pixel;
    return {std::string("LINK=") + driver.link,
            "PANEL_CONTROLLER=" + controller_type(display.controller),
            "PANEL_ADDRESS_MODE=" + std::to_string(mode.address_mode),
            "PANEL_COLUMN_OFFSET=" + std::to_string(mode.column_offset),
            "PANEL_PAGE_OFFSET=" + std::to_string(mode.page_offset),
            "PANEL_BYTES=" + std::to_string(bytes),
            std::string("PANEL_INVERTED=") + (display.inverted ? "true" : "false")};
}

struct Piece {
    std::uint16_t x, y, width, height;
    std::vector<std::pair<std::uint16_t, std::uint16_t>>
        runs;  ///< Colour, pixels; fill the window.
};

/// Windows of every odd shape, runs of every length; the runs of a window fill it exactly.
std::vector<Piece> random_pieces(int width, int height, int count, std::uint32_t seed) {
    std::mt19937 random(seed);
    const auto below = [&random](int n) {
        return static_cast<int>(random() % static_cast<std::uint32_t>(n));
    };
    std::vector<Piece> pieces;
    // Corners, and the whole width and height.
    const auto add = [&](int x, int y, int w, int h) {
        Piece piece{static_cast<std::uint16_t>(x),
                    static_cast<std::uint16_t>(y),
                    static_cast<std::uint16_t>(w),
                    static_cast<std::uint16_t>(h),
                    {}};
        int left = w * h;
        while (left > 0) {
            int run = below(4) == 0 ? 1 : 1 + below(std::min(left, 300));
            run = std::min(run, left);
            const int kind = below(4);
            const std::uint32_t colour = kind == 0   ? 0xFFFF
                                         : kind == 1 ? 0x0000
                                                     : random() & 0xFFFF;
            piece.runs.emplace_back(static_cast<std::uint16_t>(colour),
                                    static_cast<std::uint16_t>(run));
            left -= run;
            if (below(20) == 0) piece.runs.emplace_back(std::uint16_t{0x1234}, std::uint16_t{0});
        }
        pieces.push_back(piece);
    };
    add(0, 0, 1, 1);
    add(width - 1, height - 1, 1, 1);
    add(width - 1, 0, 1, 1);
    add(0, height - 1, 1, 1);
    add(0, height / 2, width, 1);
    add(width / 2, 0, 1, height);
    while (static_cast<int>(pieces.size()) < count) {
        const int w = 1 + below(40), h = 1 + below(30);
        add(below(width - w + 1), below(height - h + 1), w, h);
    }
    return pieces;
}

void append_word(std::vector<std::uint8_t>& script, std::uint16_t word) {
    script.push_back(static_cast<std::uint8_t>(word & 0xFF));
    script.push_back(static_cast<std::uint8_t>(word >> 8));
}

std::vector<std::uint8_t> script_of(const std::vector<Piece>& pieces) {
    std::vector<std::uint8_t> script;
    for (const Piece& piece : pieces) {
        script.push_back(1);
        for (std::uint16_t word : {piece.x, piece.y, piece.width, piece.height}) {
            append_word(script, word);
        }
        for (const auto& [colour, count] : piece.runs) {
            script.push_back(2);
            append_word(script, colour);
            append_word(script, count);
        }
    }
    script.push_back(4);
    return script;
}

/// A byte of the bus; commands have bit 8 set.
using BusBytes = std::vector<std::uint16_t>;

struct BothSides {
    BusBytes pc, chip;
    BusFaults faults;
    BusCounters counters;
    std::vector<std::uint16_t> pc_glass, chip_glass;
    int stack = 0;
};

BothSides draw(const Driver& driver,
               const Display& display,
               int turn,
               const std::vector<Piece>& pieces,
               const std::string& mcu = "atmega328p") {
    BothSides result;
    Controller pc_controller(display, driver.bus);
    Wire wire(pc_controller, display, turn, driver.bus);
    wire.observe([&result](bool command, std::uint8_t byte) {
        result.pc.push_back(static_cast<std::uint16_t>(byte | (command ? 0x100 : 0)));
    });
    wire.start();
    for (const Piece& piece : pieces) {
        wire.window(piece.x, piece.y, piece.width, piece.height);
        for (const auto& [colour, count] : piece.runs) {
            wire.push(colour, count);
        }
    }
    result.pc_glass = pc_controller.glass(turn);

    BoardOptions options;
    options.mcu = mcu;
    options.display = wiring_of(driver, mcu);
    auto board =
        board_with(firmware("driver", definitions(driver, display, turn), {}, mcu), options);
    Controller chip_controller(display, driver.bus);
    board->observe_bus([&](bool command, std::uint8_t byte) {
        result.chip.push_back(static_cast<std::uint16_t>(byte | (command ? 0x100 : 0)));
        if (command) {
            chip_controller.command(byte);
        } else {
            chip_controller.data(byte);
        }
    });
    board->feed(script_of(pieces));
    while (board->run_until_mark(start_up) == Stop::mark && board->marks().back().value != 9) {
    }
    EXPECT_EQ(board->marks().back().value, 9) << "the firmware did not come to its end";
    result.faults = board->faults();
    result.counters = chip_controller.counters();
    result.chip_glass = chip_controller.glass(turn);
    result.stack = board->stack_mark();
    return result;
}

void expect_the_same(const BothSides& outcome) {
    ASSERT_EQ(outcome.chip.size(), outcome.pc.size());
    const auto apart = std::mismatch(outcome.pc.begin(), outcome.pc.end(), outcome.chip.begin());
    EXPECT_TRUE(apart.first == outcome.pc.end())
        << "byte " << apart.first - outcome.pc.begin() << std::hex << ": PC " << *apart.first
        << ", chip " << *apart.second << " (bit 8: command)";
    EXPECT_EQ(outcome.faults.collisions, 0);
    EXPECT_EQ(outcome.faults.overruns, 0);
    EXPECT_EQ(outcome.faults.edges_while_shifting, 0);
    EXPECT_EQ(outcome.counters.unknown_commands, 0);
    EXPECT_EQ(outcome.counters.bad_windows, 0);
    EXPECT_EQ(outcome.counters.stray_parameters, 0);
    EXPECT_TRUE(outcome.chip_glass == outcome.pc_glass);
    EXPECT_GT(outcome.stack, 0);
    EXPECT_LE(outcome.stack, 40) << "bytes of stack";
}

class DriverOf : public testing::TestWithParam<Driver> {};

TEST_P(DriverOf, SendsTheBytesOfThePcAndNoFault) {
    const Driver& driver = GetParam();
    const Display display = display_named("2.8in-ILI9341");
    expect_the_same(draw(driver, display, 90, random_pieces(320, 240, 60, 1)));
}

TEST_P(DriverOf, SendsThreeBytesAPixelWhereTheSerialBusWantsThem) {
    const Driver& driver = GetParam();
    const Display display = display_named("3.5in-ILI9488");
    const BothSides outcome = draw(driver, display, 270, random_pieces(480, 320, 30, 2));
    expect_the_same(outcome);
}

std::string link_of(const testing::TestParamInfo<Driver>& driver) {
    return driver.param.link;
}

INSTANTIATE_TEST_SUITE_P(UiMcu, DriverOf, testing::ValuesIn(drivers), link_of);

TEST(Drivers, WakeEveryDisplayInEveryTurn) {
    std::set<std::vector<std::string>>
        seen;  // Modules that differ in size alone need no second look.
    for (const Display& display : all_displays()) {
        for (int turn : {0, 90, 180, 270}) {
            SCOPED_TRACE(display.name + " turned " + std::to_string(turn));
            const Driver& driver = drivers[turn == 0 ? 0 : turn == 90 ? 2 : turn == 180 ? 3 : 4];
            if (!seen.insert(definitions(driver, display, turn)).second) continue;
            const bool lying = turn % 180 != 0;
            const int width = lying ? display.height : display.width;
            const int height = lying ? display.width : display.height;
            expect_the_same(draw(driver, display, turn, random_pieces(width, height, 8, 3)));
            if (testing::Test::HasFailure()) return;
        }
    }
    EXPECT_GT(seen.size(), 20u);
}

TEST(Drivers, RunOnTheLargerPartWithPortsBeyondTheReachOfOut) {
    const Display display = display_named("3.5in-ILI9488");
    for (const Driver& driver : drivers) {
        SCOPED_TRACE(driver.link);
        if (std::string(driver.link) == "split")
            continue;  // A wiring of the smaller part's boards.
        expect_the_same(draw(driver, display, 90, random_pieces(480, 320, 12, 4), "atmega2560"));
    }
}

/// Cycles of one push of n pixels for each n, from a driver on the bench.
std::vector<CycleCount> push_cycles(const Driver& driver,
                                    int bytes,
                                    std::uint16_t colour,
                                    const std::vector<int>& lengths) {
    BoardOptions options;
    options.display = wiring_of(driver);
    auto board = board_with(
        firmware("driver",
                 {std::string("LINK=") + driver.link, "PANEL_BYTES=" + std::to_string(bytes)}),
        options);
    std::vector<std::uint8_t> script;
    for (int length : lengths) {
        // Each run begins with the bus at rest.
        script.push_back(3);
        script.push_back(1);
        for (int word : {0, 0, length, 1})
            append_word(script, static_cast<std::uint16_t>(word));
        script.push_back(3);
        script.push_back(2);
        append_word(script, colour);
        append_word(script, static_cast<std::uint16_t>(length));
    }
    script.push_back(4);
    board->feed(script);
    while (board->run_until_mark(start_up) == Stop::mark && board->marks().back().value != 9) {
    }
    return spans(*board, 2, 3);
}

TEST(Drivers, TakeTheCyclesOfTheirLoops) {
    struct Row {
        Driver driver;
        int bytes;
        std::uint16_t colour;
        double a_pixel;
        double
            slack;  ///< Over the whole series: 0 for what is counted, a round of a poll loop else.
        const char* source;
    };
    const Row rows[] = {
        {{"timed", BusKind::spi_timed}, 2, 0x1234, 36, 0, "2 x 18, standards BUS-15"},
        {{"timed", BusKind::spi_timed}, 3, 0x1234, 54, 0, "3 x 18"},
        {{"usart", BusKind::usart_spi}, 2, 0x1234, 32, 5, "2 x 16, the floor, standards BUS-13"},
        {{"usart", BusKind::usart_spi}, 3, 0x1234, 48, 5, "3 x 16"},
        {{"polled", BusKind::spi},
         2,
         0x1234,
         44,
         0,
         "17 and IN, SBRS, OUT a byte; SUBI, SBCI, BRNE"},
        {{"parallel", BusKind::parallel8}, 2, 0x1234, 10, 0, "3 OUT a byte, SUBI, SBCI, BRNE"},
        {{"parallel", BusKind::parallel8}, 2, 0xFFFF, 8, 0, "2 OUT a byte"},
    };
    std::vector<int> lengths;
    for (int n = 1; n <= 20; ++n)
        lengths.push_back(n);
    lengths.push_back(255);
    lengths.push_back(256);
    lengths.push_back(257);
    lengths.push_back(1000);
    for (const Row& row : rows) {
        SCOPED_TRACE(std::string(row.driver.link) + ": " + row.source);
        const auto times = push_cycles(row.driver, row.bytes, row.colour, lengths);
        ASSERT_EQ(times.size(), lengths.size());
        for (std::size_t i = 0; i < times.size(); ++i) {
            const double expected = static_cast<double>(times[4]) + row.a_pixel * (lengths[i] - 5);
            EXPECT_NEAR(static_cast<double>(times[i]), expected, row.slack)
                << lengths[i] << " pixels";
        }
    }
}

TEST(Drivers, CollideWhereAChipNeedsACycleMoreThanTheyCount) {
    BoardOptions options;
    options.display = wiring_of({"timed", BusKind::spi_timed});
    options.spi.write_after = 3;
    auto board = board_with(firmware("driver", {"LINK=timed"}), options);
    std::int64_t bytes = 0;
    board->observe_bus([&bytes](bool, std::uint8_t) { ++bytes; });
    board->feed(script_of({{0, 0, 10, 1, {{0x1234, 10}}}}));
    while (board->run_until_mark(start_up) == Stop::mark && board->marks().back().value != 9) {
    }
    EXPECT_GT(board->faults().collisions, 0);
}

}  // namespace
}  // namespace dialplate

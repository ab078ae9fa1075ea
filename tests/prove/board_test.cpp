// The bench measured against figures from data sheets and hardware: if a later libsimavr, or an edit here,
// changes what a cycle costs, it shows in this file and not in a proof.
#include "sim/prove/board.hpp"

#include "tests/prove/bench.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace dialplate {
namespace {

constexpr CycleCount enough = 2'000'000;

std::vector<std::uint8_t> heard(Board& board, CycleCount cycles) {
    std::vector<std::uint8_t> bytes;
    board.observe_bus([&bytes](bool, std::uint8_t byte) { bytes.push_back(byte); });
    board.run_for(cycles);
    return bytes;
}

TEST(Board, TakesAsLongForAPolledSpiByteAsTheShiftAndTheLoopAddUpTo) {
    struct Row {
        const char* divider;
        CycleCount cycles;
        const char* source;
    };
    // Flag after 8 bits and one cycle; then IN 1, SBRS with skip 2, DEC 1, BRNE 2 (AVR instruction set).
    const Row rows[] = {
        {"DIVIDER=2", 17 + 6, "8 x 2 + 1; hardware measurement of 2025, second-hand"},
        {"DIVIDER=4", 33 + 6, "8 x 4 + 1, by the same rule"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        auto board = board_with(firmware("spi_loop", {"POLLED", row.divider}));
        EXPECT_EQ(heard(*board, enough).size(), 64u);
        // Beside the 64 bytes: OUT of the mark, two LDI, and the last branch is a cycle shorter.
        EXPECT_EQ(spans(*board, 1, 2).at(0), 64 * row.cycles + 1 + 2 - 1);
        EXPECT_EQ(board->faults().total(), 0);
    }
}

TEST(Board, LosesSpiBytesThatAreWrittenTooSoon) {
    struct Row {
        const char* spacing;
        CycleCount write_after;
        std::size_t arrive;
        std::int64_t collide;
        const char* source;
    };
    const Row rows[] = {
        {"SPACING=18", 2, 64, 0, "18 is good on hardware (2025, second-hand)"},
        {"SPACING=17",
         2,
         32,
         32,
         "17 loses the byte, same source: every other write finds it busy"},
        {"SPACING=17", 1, 64, 0, "the lenient model takes 17"},
        {"SPACING=16", 2, 32, 32, "a byte is 16 cycles of clock alone"},
        {"SPACING=16", 1, 32, 32, "so 16 is too soon for the lenient model as well"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        BoardOptions options;
        options.spi.write_after = row.write_after;
        auto board = board_with(firmware("spi_loop", {"DIVIDER=2", row.spacing}), options);
        EXPECT_EQ(heard(*board, enough).size(), row.arrive);
        EXPECT_EQ(board->faults().collisions, row.collide);
    }
}

TEST(Board, SendsUsartBytesBackToBack) {
    auto board = board_with(firmware("usart_loop"), [] {
        BoardOptions options;
        options.display.bus = BusKind::usart_spi;
        return options;
    }());
    std::vector<int> lengths(20);
    std::iota(lengths.begin(), lengths.end(), 1);
    lengths.push_back(1000);
    std::vector<std::uint8_t> script;
    for (int length : lengths) {
        script.push_back(static_cast<std::uint8_t>(length & 0xFF));
        script.push_back(static_cast<std::uint8_t>(length >> 8));
    }
    board->feed(script);
    const auto bytes = heard(*board, enough);
    const auto times = spans(*board, 1, 2);
    ASSERT_EQ(times.size(), lengths.size());
    EXPECT_EQ(bytes.size(), 2u * (210 + 1000));
    std::vector<long> beside;
    for (std::size_t i = 0; i < times.size(); ++i) {
        beside.push_back(static_cast<long>(times[i]) - 32L * lengths[i]);
    }
    // 16 cycles a byte is the floor (standards BUS-13), so 32 a pixel. Beside it stand call, return and
    // the way to the first byte, and after the last the poll that sees the flag: a round is five cycles.
    const auto [least, most] = std::minmax_element(beside.begin(), beside.end());
    EXPECT_GE(*least, 16);
    EXPECT_LE(*most, 32);
    EXPECT_LE(*most - *least, 4);
    // The poll that sees the last flag comes up to one round of five cycles late.
    EXPECT_NEAR(static_cast<double>(times.back() - times.front()), 32.0 * 999, 4.0);
    EXPECT_EQ(board->faults().total(), 0);
}

TEST(Board, EntersAnInterruptInNoLessThanFourCycles) {
    const auto elf = firmware("interrupt");
    const auto again = elf.parent_path() / "interrupt.again.elf";
    std::filesystem::copy_file(elf, again, std::filesystem::copy_options::overwrite_existing);
    BoardOptions as_simulated;
    as_simulated.interrupt_entry_cycles = 0;
    auto with = board_with(elf);
    auto without = board_with(again, as_simulated);
    with->run_for(100'000);
    without->run_for(100'000);
    const auto after = spans(*with, 7, 0);
    const auto before = spans(*without, 7, 0);
    ASSERT_GT(after.size(), 300u);
    EXPECT_EQ(after[0] - before[0], 4u)
        << "data sheet, interrupt response time: four cycles minimum";
    // The timer keeps its beat: later entries come every 256 cycles, give or take the instruction that
    // was running.
    for (std::size_t i = 1; i < after.size(); ++i) {
        EXPECT_NEAR(static_cast<double>(after[i] - after[i - 1]), 256.0, 2.0);
    }
}

TEST(Board, SleepsAtTheSpeedOfTheSimulationAndKeepsTheCycles) {
    auto board = board_with(firmware("sleeper"));
    board->run_for(17'000'000);
    const auto span = spans(*board, 1, 2);
    ASSERT_EQ(span.size(), 1u);
    EXPECT_NEAR(static_cast<double>(span[0]), 61.0 * 1024 * 256, 20.0)
        << "timer 0 at 16 MHz / 1024";
}

TEST(Board, ShowsALineHeldFromOutsideWhateverIsWrittenToItsPort) {
    auto board = board_with(firmware("pull_up"));
    board->drive({'D', 7}, false);
    EXPECT_EQ(board->run_until_mark(enough), Stop::mark);
    EXPECT_EQ(board->told(), std::vector<std::uint8_t>(6, 0));
    auto free_board = board_with(firmware("pull_up"));
    EXPECT_EQ(free_board->run_until_mark(enough), Stop::mark);
    EXPECT_EQ(free_board->told(), std::vector<std::uint8_t>(6, 0x80)) << "the pull-up alone";
}

TEST(Board, MeasuresTheStackByWhatItOverwrote) {
    auto flat = board_with(firmware("stack", {"DEPTH=0"}));
    auto deep = board_with(firmware("stack", {"DEPTH=100"}));
    EXPECT_EQ(flat->run_until_mark(enough), Stop::mark);
    EXPECT_EQ(deep->run_until_mark(enough), Stop::mark);
    EXPECT_GE(flat->stack_mark(), 2) << "the return address of main";
    EXPECT_LE(flat->stack_mark(), 8);
    const int more = deep->stack_mark() - flat->stack_mark();
    EXPECT_GE(more, 100 + 2) << "the array and a return address";
    EXPECT_LE(more, 100 + 2 + 6) << "and at most some saved registers";
    EXPECT_EQ(flat->size().data, 40);
}

TEST(Board, StopsRightBehindAMark) {
    auto board = board_with(firmware("spi_loop", {"POLLED", "DIVIDER=2"}));
    EXPECT_EQ(board->run_until_mark(enough), Stop::mark);
    ASSERT_EQ(board->marks().size(), 1u);
    EXPECT_EQ(board->marks()[0].value, 1);
    EXPECT_EQ(board->cycles(), board->marks()[0].at + 1) << "OUT takes one cycle";
    EXPECT_EQ(board->bus_bytes(), 0);
    EXPECT_EQ(board->run_until_mark(enough), Stop::mark);
    EXPECT_EQ(board->marks().back().value, 2);
    EXPECT_EQ(board->run_until_mark(100), Stop::cycles) << "the third is 200 rounds away";
}

TEST(Board, RefusesWhatIsNoFirmware) {
    const auto path = std::filesystem::path(DIALPLATE_TREE) / "LICENSE";
    Board board{BoardOptions{}};
    const auto wrong = board.load(path);
    ASSERT_TRUE(wrong.has_value());
    EXPECT_NE(wrong->find("not an ELF file"), std::string::npos) << *wrong;
    Board missing{BoardOptions{}};
    EXPECT_TRUE(missing.load("no/such/file.elf").has_value());
}

}  // namespace
}  // namespace dialplate

// Drivers broken on purpose: each mistake is made in a copy of the file in ui/mcu, and the bench must tell.
#include "tests/prove/bench.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <unistd.h>

namespace dialplate {
namespace {

struct Mistake {
    const char* what;
    const char* link;
    BusKind bus;
    const char* file;                                        ///< Of ui/mcu.
    std::vector<std::pair<const char*, const char*>> edits;  ///< First place only, in this order.
};

/// A folder with the changed file in it, in the place that the include names.
std::filesystem::path changed_tree(const Mistake& mistake) {
    const std::filesystem::path tree = DIALPLATE_TREE;
    const std::filesystem::path folder =
        std::filesystem::path(DIALPLATE_OUT) / "prove" / ("faulty." + std::to_string(getpid()));
    std::ifstream in(tree / "ui/mcu" / mistake.file);
    std::stringstream text;
    text << in.rdbuf();
    std::string changed = text.str();
    for (const auto& [from, to] : mistake.edits) {
        const std::size_t at = changed.find(from);
        if (at == std::string::npos) throw std::runtime_error(std::string("nothing like ") + from);
        changed.replace(at, std::string(from).size(), to);
    }
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder / "ui/mcu");
    std::ofstream(folder / "ui/mcu" / mistake.file) << changed;
    return folder;
}

struct Heard {
    std::vector<std::uint16_t> bytes;  ///< Commands have bit 8 set.
    BusFaults faults;
    bool finished = false;
};

/// Two windows of 12 and 3 pixels.
Heard hear(const char* link, BusKind bus, const std::filesystem::path& tree) {
    BoardOptions options;
    options.display.bus = bus;
    auto board = board_with(firmware("driver", {std::string("LINK=") + link}, tree), options);
    Heard heard;
    board->observe_bus([&heard](bool command, std::uint8_t byte) {
        heard.bytes.push_back(static_cast<std::uint16_t>(byte | (command ? 0x100 : 0)));
    });
    board->feed({1, 5, 0, 6, 0, 12, 0, 1, 0, 2, 0x34, 0x12, 12, 0,  //
                 1, 1, 1, 0, 0, 3,  0, 1, 0, 2, 0x78, 0x56, 3,  0, 4});
    while (!heard.finished && board->run_until_mark(start_up) == Stop::mark) {
        heard.finished = board->marks().back().value == 9;
    }
    heard.faults = board->faults();
    return heard;
}

TEST(FaultyDrivers, AreToldByTheBytesOrByTheFaults) {
    const Mistake mistakes[] = {
        {"a gap of 17 cycles",
         "timed",
         BusKind::spi_timed,
         "spi_timed.hpp",
         {{"rjmp .+0                  \\n", "nop\\n"}}},
        {"a gap of 17 cycles between the words of a window",
         "timed",
         BusKind::spi_timed,
         "spi_timed.hpp",
         {{"\"brne 1b                   \\n\\t\"\n            \"rjmp .+0                  "
           "\\n\\t\"\n            : [wait]",
           "\"brne 1b                   \\n\\t\"\n            \"nop\\n\\t\"\n            : "
           "[wait]"}}},
        {"data/command moved while the last byte leaves",
         "usart",
         BusKind::usart_spi,
         "usart_spi.hpp",
         {{"finish();\n        Wiring::expect_command();\n        send_last(byte);",
           "Wiring::expect_command();\n        send_last(byte);"}}},
        {"the end flag never cleared",
         "usart",
         BusKind::usart_spi,
         "usart_spi.hpp",
         {{"        UDR0 = byte;\n        UCSR0A = _BV(TXC0);", "        UDR0 = byte;"}}},
        {"no asking whether the buffer is free",
         "usart",
         BusKind::usart_spi,
         "usart_spi.hpp",
         {{"while (!(UCSR0A & _BV(UDRE0)))", "while (false)"}}},
        {"no waiting for the flag",
         "polled",
         BusKind::spi,
         "spi_polled.hpp",
         {{"while (!(SPSR & _BV(SPIF)))", "while (false)"}}},
        {"bytes of a pixel exchanged",
         "polled",
         BusKind::spi,
         "display_bus.hpp",
         {{"Link::run(static_cast<uint8_t>(colour >> 8), static_cast<uint8_t>(colour), count);",
           "Link::run(static_cast<uint8_t>(colour), static_cast<uint8_t>(colour >> 8), count);"}}},
        {"a window without its memory write",
         "polled",
         BusKind::spi,
         "window_commands.hpp",
         {{"Link::command(display_command::write_memory_start);", ""}}},
        {"a timed window without its memory write",
         "timed",
         BusKind::spi_timed,
         "spi_timed.hpp",
         {{"shift_command(display_command::write_memory_start);", ""}}},
        {"one strobe a byte instead of two edges",
         "parallel",
         BusKind::parallel8,
         "parallel8.hpp",
         {{"Write::toggle();\n        Write::toggle();", "Write::toggle();"}}},
    };
    for (const Mistake& mistake : mistakes) {
        SCOPED_TRACE(mistake.what);
        const Heard right = hear(mistake.link, mistake.bus, {});
        ASSERT_TRUE(right.finished);
        ASSERT_EQ(right.faults.total(), 0);
        const auto tree = changed_tree(mistake);
        const Heard wrong = hear(mistake.link, mistake.bus, tree);
        std::filesystem::remove_all(tree);
        EXPECT_TRUE(wrong.bytes != right.bytes || wrong.faults.total() > 0 || !wrong.finished);
    }
}

}  // namespace
}  // namespace dialplate

// Firmware for a test: compiled from tests/firmware/bench, put on a board.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/prove/board.hpp"

#include <filesystem>
#include <memory>
#include <string>
#include <vector>

namespace dialplate {

/// Enough for what a driver does first: waits of 245 ms at most are 3.9 million cycles at 16 MHz.
constexpr CycleCount start_up = 10'000'000;

/// The ELF file of tests/firmware/bench/NAME.cpp. A failure to compile fails the test.
/// @param changed  A folder with a tree of its own: what it holds takes the place of ui/.
std::filesystem::path firmware(const std::string& name,
                               const std::vector<std::string>& definitions = {},
                               const std::filesystem::path& changed = {},
                               const std::string& mcu = "atmega328p");

/// A board with that firmware, not yet started.
std::unique_ptr<Board> board_with(const std::filesystem::path& elf,
                                  const BoardOptions& options = {});

/// Cycles between the n-th pair of marks `from` and `to`.
std::vector<CycleCount> spans(const Board& board, std::uint8_t from, std::uint8_t to);

/// A display module of layouts/parts/displays.json.
Display display_named(const std::string& name);
std::vector<Display> all_displays();

}  // namespace dialplate

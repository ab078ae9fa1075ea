#include "tests/prove/bench.hpp"

#include "sim/layout/parts.hpp"
#include "sim/prove/toolchain.hpp"

#include <gtest/gtest.h>

#include <stdexcept>
#include <unistd.h>

namespace dialplate {

std::filesystem::path firmware(const std::string& name,
                               const std::vector<std::string>& definitions,
                               const std::filesystem::path& changed,
                               const std::string& mcu) {
    static const std::optional<Toolchain> toolchain = find_toolchain();
    if (!toolchain) throw std::runtime_error("avr-g++ and avr-libc are needed");
    const std::filesystem::path tree = DIALPLATE_TREE;
    std::string file = name;
    for (const std::string& definition : definitions) {
        file += "." + definition;
    }
    // Tests run side by side: each process builds its own.
    FirmwareSources what;
    what.sources = {tree / "tests/firmware/bench" / (name + ".cpp")};
    if (!changed.empty()) what.include_directories.push_back(changed);
    what.include_directories.push_back(tree);
    what.definitions = definitions;
    what.mcu = mcu;
    what.output = std::filesystem::path(DIALPLATE_OUT) / "prove" /
                  (file + "." + std::to_string(getpid()) + ".elf");
    std::filesystem::create_directories(what.output.parent_path());
    const std::string complaint = build_firmware(*toolchain, what);
    if (!complaint.empty()) throw std::runtime_error(complaint);
    return what.output;
}

std::unique_ptr<Board> board_with(const std::filesystem::path& elf, const BoardOptions& options) {
    auto board = std::make_unique<Board>(options);
    const auto wrong = board->load(elf);
    std::filesystem::remove(elf);
    if (wrong) throw std::runtime_error(*wrong);
    return board;
}

std::vector<CycleCount> spans(const Board& board, std::uint8_t from, std::uint8_t to) {
    std::vector<CycleCount> result;
    CycleCount start = 0;
    for (const Mark& mark : board.marks()) {
        if (mark.value == from) start = mark.at;
        if (mark.value == to) result.push_back(mark.at - start);
    }
    return result;
}

std::vector<Display> all_displays() {
    std::vector<Finding> findings;
    const Shelf<Display> shelf = load_displays(std::string(DIALPLATE_TREE) + "/layouts", findings);
    if (!shelf.readable) throw std::runtime_error("layouts/parts/displays.json cannot be read");
    return shelf.parts;
}

Display display_named(const std::string& name) {
    for (const Display& display : all_displays()) {
        if (display.name == name) return display;
    }
    throw std::runtime_error("no display " + name);
}

}  // namespace dialplate

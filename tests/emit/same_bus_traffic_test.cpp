// The emitted code, compiled for the PC, against the engine that draws in the simulator: the same windows and
// pixels, with just the parts that the layout uses and just the memory that they need.
#include "sim/emit/emission.hpp"
#include "tests/emit/emitted_code.hpp"
#include "tests/emit/recorded_play.hpp"
#include "tests/prototype/examples.hpp"
#include "ui/screen.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iomanip>
#include <sstream>
#include <vector>

namespace dialplate {
namespace {

std::string harness(const Layout& layout) {
    std::ostringstream text;
    text << "#include \"layout.hpp\"\n#include \"" DIALPLATE_TREE
            "/tests/emit/recorded_play.hpp\"\n#include <cstdio>\n"
            "uint8_t memory[layout::memory_bytes];\nint main() {\n"
         << "    static const bus_traffic::Range ranges[] = {{0, 0, 0}";
    for (const Value& value : layout.values) {
        text << ", {" << value.start << ", " << value.min << ", " << value.max << '}';
    }
    text << "};\n    bus_traffic::Record record;\n"
         << "    layout::Screen<bus_traffic::RecordingBus> "
            "screen(bus_traffic::RecordingBus{&record}, layout::image(), "
            "memory);\n"
         << "    bus_traffic::play<dialplate::Point, dialplate::Event>(screen, ranges + 1, "
         << layout.values.size() << ", " << layout.pages.size()
         << ");\n    std::printf(\"%016llx %ld %ld\\n\", static_cast<unsigned long "
            "long>(record.finished()), record.windows, record.pixels);\n}\n";
    return text.str();
}

/// The same with the engine as the simulator has it: every part, its own sources.
std::string traffic_of_the_simulator(const Layout& layout, const BuiltImage& built) {
    std::vector<bus_traffic::Range> ranges;
    for (const Value& value : layout.values)
        ranges.push_back({value.start, value.min, value.max});
    std::vector<std::uint8_t> memory(
        static_cast<std::size_t>(built.arena_values + built.arena_shown_by_all_parts) + 1);
    bus_traffic::Record record;
    Screen<bus_traffic::RecordingBus> screen(
        bus_traffic::RecordingBus{&record},
        Rom<MemoryBytes>(
            MemoryBytes(built.bytes.data(), static_cast<std::uint16_t>(built.bytes.size()))),
        memory.data());
    bus_traffic::play<Point, Event>(screen,
                                    ranges.data(),
                                    static_cast<int>(ranges.size()),
                                    static_cast<int>(layout.pages.size()));
    std::ostringstream line;
    line << std::hex << std::setfill('0') << std::setw(16) << record.finished() << std::dec << ' '
         << record.windows << ' ' << record.pixels << '\n';
    return line.str();
}

class SameBusTraffic : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Examples, SameBusTraffic, testing::ValuesIn(example_files()), test_name);

TEST_P(SameBusTraffic, FromTheEmittedCodeAndTheSimulator) {
    const LoadedExample it = load_example(GetParam());
    const std::string name = std::filesystem::path(GetParam()).stem();
    const std::filesystem::path directory =
        emitted_into("traffic-" + name, emit(it.layout, it.image, Example::own_driver));
    std::ofstream(directory / "emitted_side.cpp") << harness(it.layout);
    // The sanitizers see a byte read or written beyond the memory that the emitted code states.
    const Ran emitted = run_shell("cd '" + directory.string() +
                                  "' && g++ -std=c++14 -O1 -Wall -Wextra "
                                  "-fsanitize=address,undefined -fno-sanitize-recover=all "
                                  "emitted_side.cpp image.cpp -o emitted_side && ./emitted_side");
    EXPECT_EQ(emitted.status, 0) << emitted.output;
    EXPECT_EQ(emitted.output, traffic_of_the_simulator(it.layout, it.image));
}

}  // namespace
}  // namespace dialplate

// The emitted code, compiled for the PC, against the engine that draws in the simulator: the same windows and
// pixels, with just the parts that the layout uses and just the memory that they need.
#include "sim/emit/emission.hpp"
#include "tests/emit/emitted_code.hpp"
#include "tests/prototype/examples.hpp"
#include "ui/screen.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace dialplate {
namespace {

// The play: start values, every page; then each value to its ends and back, drawn after each, on every page.
// Source text and not a function, because both sides compile it, each around its own engine.
constexpr const char* recorder = R"(
struct Record {
    uint64_t print = 0xCBF29CE484222325U;
    long pixels = 0, windows = 0;
    void add(uint16_t word) { print = (print ^ word) * 0x100000001B3U; }
};
struct RecordingBus {
    Record* record;
    void window(uint16_t x, uint16_t y, uint16_t w, uint16_t h) {
        ++record->windows;
        for (const uint16_t word : {x, y, w, h}) record->add(word);
    }
    void push(uint16_t colour, uint16_t count) {
        record->pixels += count;
        for (uint16_t n = 0; n < count; ++n) record->add(colour);
    }
};
struct Range { int32_t start, min, max; };
template <class AnyScreen>
void play(AnyScreen& screen, const Range* ranges, int values, int pages) {
    uint16_t now = 0;
    const auto settle = [&] { while (screen.service(now)) {} now = static_cast<uint16_t>(now + 10); };
    for (int v = 0; v < values; ++v) screen.set(static_cast<uint8_t>(v), ranges[v].start);
    for (int p = 0; p < pages; ++p) {
        screen.show_page(static_cast<uint8_t>(p));
        settle();
        for (int v = 0; v < values; ++v) {
            for (const int32_t to : {ranges[v].max, ranges[v].min, ranges[v].start}) {
                screen.set(static_cast<uint8_t>(v), to);
                settle();
            }
        }
        for (uint16_t x = 0; x < 480; x = static_cast<uint16_t>(x + 61)) {
            for (uint16_t y = 0; y < 480; y = static_cast<uint16_t>(y + 53)) {
                screen.touch(dialplate::Point{x, y});
                settle();
                now = static_cast<uint16_t>(now + 1000);
                settle();
                screen.lift();
                settle();
                dialplate::Event event;
                while (screen.next_event(event)) {}
                screen.show_page(static_cast<uint8_t>(p));
            }
        }
    }
}
)";

std::string harness(const Layout& layout) {
    std::ostringstream text;
    text << "#include \"layout.hpp\"\n#include <cstdio>\n#include <initializer_list>\n"
         << recorder << "uint8_t memory[layout::memory_bytes];\nint main() {\n"
         << "    static const Range ranges[] = {{0, 0, 0}";
    for (const Value& value : layout.values) {
        text << ", {" << value.start << ", " << value.min << ", " << value.max << '}';
    }
    text << "};\n    Record record;\n"
         << "    layout::Screen<RecordingBus> screen(RecordingBus{&record}, layout::image(), "
            "memory);\n"
         << "    play(screen, ranges + 1, " << layout.values.size() << ", " << layout.pages.size()
         << ");\n    std::printf(\"%016llx %ld %ld\\n\", static_cast<unsigned long "
            "long>(record.print), record.windows, record.pixels);\n}\n";
    return text.str();
}

/// The same with the engine as the simulator has it: every part, its own sources.
std::string simulators_harness(const Layout& layout, const BuiltImage& built) {
    std::ostringstream text;
    text << "#include \"ui/screen.hpp\"\nnamespace layout {\n"
         << "const uint8_t bytes[] = {";
    for (const std::uint8_t byte : built.bytes)
        text << int{byte} << ',';
    text << "};\nconstexpr int memory_bytes = "
         << built.arena_values + built.arena_shown_by_all_parts + 1
         << ";\ntemplate <class Bus> using Screen = dialplate::Screen<Bus>;\n"
         << "using Image = dialplate::Rom<dialplate::MemoryBytes>;\n"
         << "inline Image image() { return Image(dialplate::MemoryBytes(bytes, sizeof bytes)); "
            "}\n}\n";
    std::string rest = harness(layout);
    return text.str() + rest.substr(rest.find('\n') + 1);
}

class SameBusTraffic : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Examples, SameBusTraffic, testing::ValuesIn(example_files()), test_name);

TEST_P(SameBusTraffic, FromTheEmittedCodeAndTheSimulator) {
    const LoadedExample it = load_example(GetParam());
    const std::string name = std::filesystem::path(GetParam()).stem();
    const std::filesystem::path directory =
        emitted_into("traffic-" + name, emit(it.layout, it.image, Example::own_driver));
    std::ofstream(directory / "emitted_side.cpp") << harness(it.layout);
    std::ofstream(directory / "simulator_side.cpp") << simulators_harness(it.layout, it.image);
    // The sanitizers see a byte read or written beyond the memory that the emitted code states.
    const std::string compile = "cd '" + directory.string() +
                                "' && g++ -std=c++14 -O1 -Wall -Wextra "
                                "-fsanitize=address,undefined -fno-sanitize-recover=all ";
    const Ran emitted =
        run_shell(compile + "emitted_side.cpp image.cpp -o emitted_side && ./emitted_side");
    const Ran simulated = run_shell(compile + "-I'" DIALPLATE_TREE
                                              "' simulator_side.cpp -o simulator_side && "
                                              "./simulator_side");
    EXPECT_EQ(emitted.status, 0) << emitted.output;
    EXPECT_EQ(simulated.status, 0) << simulated.output;
    EXPECT_EQ(emitted.output, simulated.output);
}

}  // namespace
}  // namespace dialplate

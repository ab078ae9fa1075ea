// The emitted code as another processor runs it: compiled for Cortex-M0+ and Cortex-M3, under qemu, each byte
// of the bus against the simulator's. qemu tells what comes out, not how long it takes.
//
// The machine for Cortex-M0+ code is microbit, whose Cortex-M0 runs the same instructions (ARMv6-M).
#include "sim/display/controller.hpp"
#include "sim/display/wire.hpp"
#include "sim/emit/emission.hpp"
#include "tests/emit/emitted_code.hpp"
#include "tests/firmware/portable/crc32.hpp"
#include "tests/firmware/portable/orders.hpp"
#include "tests/firmware/portable/play.hpp"
#include "tests/prototype/examples.hpp"
#include "ui/screen.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <iostream>
#include <sstream>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

class WireBus {
public:
    explicit WireBus(Wire& wire) : wire_(&wire) {}
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t w, std::uint16_t h) {
        wire_->window(x, y, w, h);
    }
    void push(std::uint16_t colour, std::uint16_t count) { wire_->push(colour, count); }

private:
    Wire* wire_;
};

/// As the firmware prints it.
std::string line(const char* name, const Crc32& crc) {
    std::ostringstream text;
    text << name << ' ' << std::hex << crc.value() << std::dec << ' ' << crc.bytes();
    return text.str();
}

struct Checksums {
    Crc32 sent, happened;
};

/// The play on the simulator's own engine, with every part, and its own wire.
Checksums simulated(const LoadedExample& it, const std::vector<std::uint8_t>& orders) {
    Controller controller(it.layout.display, it.layout.bus.kind);
    Wire wire(controller, it.layout.display, it.layout.turn, it.layout.bus.kind);
    Crc32 sent, happened;
    wire.observe([&sent](bool, std::uint8_t byte) { sent.add(byte); });
    wire.start();
    std::vector<std::uint8_t> memory(
        static_cast<std::size_t>(it.image.arena_values + it.image.arena_shown_by_all_parts + 1));
    using WireScreen = Screen<WireBus>;
    WireScreen screen(
        WireBus(wire),
        Rom<MemoryBytes>(
            MemoryBytes(it.image.bytes.data(), static_cast<std::uint16_t>(it.image.bytes.size()))),
        memory.data());
    bool holds = false;
    for (const Page& page : it.layout.pages)
        for (const Item& item : page.items)
            holds = holds || (item.kind == ItemKind::key &&
                              (item.key.repeat || item.key.hold.kind != ActionKind::none));
    const auto heard = [&](Event event) {
        // The firmware of a layout that holds no key has no clock on them.
        if (event.what == KeyMotion::hold && !holds) return;
        happened.add(static_cast<std::uint8_t>(event.what));
        happened.add(event.held && holds);
        happened.add(static_cast<std::uint8_t>(event.key));
        happened.add(static_cast<std::uint8_t>(event.key >> 8));
    };
    const std::uint8_t* at = orders.data();
    play::perform<WireScreen, Point, Event>(
        screen, [&at] { return *at++; }, heard);
    return {sent, happened};
}

struct Machine {
    const char* cpu;
    const char* part;  ///< In layouts/parts/mcus.json.
    const char* family;
    const char* qemu;
};
constexpr Machine machines[] = {
    {"cortex-m0plus", "RP2040", "cortex-m0plus", "microbit"},
    {"cortex-m3", "STM32F103C8", "cortex-m3", "mps2-an385"},
};

bool have_arm() {
    return run_shell("command -v arm-none-eabi-g++ && command -v qemu-system-arm").status == 0;
}

/// Emits for the part, adds the play and the functions of an Arduino core that wiring.hpp names.
fs::path sources_for(const LoadedExample& example,
                     const std::string& name,
                     const Machine& machine,
                     const std::vector<std::uint8_t>& orders) {
    LoadedExample it = example;
    it.layout.mcu.name = machine.part;
    it.layout.mcu.family = machine.family;
    it.layout.mcu.object_max.reset();
    EXPECT_FALSE(cannot_emit(it.layout, it.image, usual_example(it.layout.mcu)));
    const fs::path directory =
        emitted_into(name, emit(it.layout, it.image, usual_example(it.layout.mcu)));
    fs::create_directories(directory / "stand_in");
    std::ofstream(directory / "stand_in/Arduino.h")
        << "#pragma once\n#include <stdint.h>\n#define OUTPUT 1\n#define HIGH 1\n#define LOW 0\n"
           "void pinMode(uint8_t pin, uint8_t mode);\nvoid digitalWrite(uint8_t pin, uint8_t "
           "level);\n"
           "void delay(unsigned long ms);\nunsigned long millis();\n";
    std::ofstream file(directory / "orders.cpp");
    file << "#include <stdint.h>\nextern const uint8_t orders[];\nconst uint8_t orders[] = {";
    for (const std::uint8_t byte : orders)
        file << int{byte} << ',';
    file << "};\n";
    return directory;
}

constexpr const char* portable = DIALPLATE_TREE "/tests/firmware/portable/";

/// Compiles what stands in a directory around one of the programs in tests/firmware/portable, without a warning.
void compile(const fs::path& directory,
             const std::string& compiler,
             const std::string& sources,
             const std::string& rest) {
    const Ran built =
        run_shell("cd '" + directory.string() + "' && " + compiler +
                  " -std=c++14 -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Werror -I. "
                  "-Istand_in -I'" DIALPLATE_TREE "' " +
                  sources + ' ' + rest + " -o firmware.elf");
    EXPECT_EQ(built.output, "");
}

void compile(const fs::path& directory, const Machine& machine, const std::string& sources) {
    compile(directory,
            std::string("arm-none-eabi-g++ -mthumb -mcpu=") + machine.cpu +
                " -Os -ffreestanding -fno-exceptions -fno-rtti -fno-threadsafe-statics "
                "-ffunction-sections -fdata-sections -nostartfiles -nostdlib -Wl,--gc-sections",
            sources,
            std::string("'") + portable + "outside_cortex_m.cpp' -lgcc -T '" + portable +
                "cortex_m.ld'");
}

/// What it printed, without the depth of its stack, which goes to standard output.
std::string run(const fs::path& directory, const Machine& machine) {
    const Ran ran = run_shell("cd '" + directory.string() +
                              "' && timeout 120 qemu-system-arm -machine " + machine.qemu +
                              " -nographic -monitor none -serial none -semihosting-config "
                              "enable=on,target=native -kernel firmware.elf < /dev/null");
    EXPECT_EQ(ran.status, 0) << ran.output;
    const Ran sizes =
        run_shell("arm-none-eabi-size '" + (directory / "firmware.elf").string() + "' | tail -n 1");
    std::istringstream in(sizes.output);
    int text = 0, data = 0;
    EXPECT_TRUE(in >> text >> data) << sizes.output;
    std::cout << machine.cpu << ", flash " << text + data << ": " << ran.output;
    return ran.output.substr(0, ran.output.find(" stack"));
}

class CortexM : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Examples, CortexM, testing::ValuesIn(example_files()), test_name);

TEST_P(CortexM, SendsTheBytesThatTheSimulatorSends) {
    const LoadedExample it = load_example(GetParam());
    const std::string stem = fs::path(GetParam()).stem();
    const std::vector<std::uint8_t> orders = orders_for(it.layout);
    const Checksums here = simulated(it, orders);
    const std::string expected = line("bus", here.sent) + line(" events", here.happened);
    const std::string sources = std::string("image.cpp orders.cpp '") + portable + "firmware.cpp'";

    const fs::path native = sources_for(it, "pc-" + stem, machines[0], orders);
    compile(native, "g++ -O1", sources, std::string("'") + portable + "outside_pc.cpp'");
    EXPECT_EQ(run_shell("'" + (native / "firmware.elf").string() + "'").output,
              expected + " stack 0\n");

    if (!have_arm()) GTEST_SKIP() << "needs the packages gcc-arm-none-eabi and qemu-system-arm";
    for (const Machine& machine : machines) {
        SCOPED_TRACE(machine.cpu);
        const fs::path directory =
            sources_for(it, std::string(machine.cpu) + '-' + stem, machine, orders);
        compile(directory, machine, sources);
        EXPECT_EQ(run(directory, machine), expected);
    }
}

TEST(CortexMSketch, DrawsTheFirstPageThroughTheDriverThatStandsForTheAuthors) {
    if (!have_arm()) GTEST_SKIP() << "needs the packages gcc-arm-none-eabi and qemu-system-arm";
    const LoadedExample it = load_example(DIALPLATE_TREE "/layouts/coast-listener.json");
    Orders orders;
    for (std::size_t v = 0; v < it.layout.values.size(); ++v)
        orders.set(v, it.layout.values[v].start);
    orders.serve();
    const std::string expected = line("bus", simulated(it, orders.ended()).sent);
    for (const Machine& machine : machines) {
        SCOPED_TRACE(machine.cpu);
        const fs::path directory =
            sources_for(it, std::string("sketch-") + machine.cpu, machine, orders.ended());
        compile(directory,
                machine,
                std::string(
                    "-Wno-shadow -DARDUINO=10819 -DSKETCH='\"coast_listener.ino\"' image.cpp '") +
                    portable + "sketch.cpp'");
        EXPECT_EQ(run(directory, machine), expected);
    }
}

// ATmega4809: this compiler has neither its start file nor its header, and nothing here runs it.
TEST(MappedAvr, LinksTheSketchWithAnImageThatPlainLoadsReach) {
    if (run_shell("command -v avr-g++").status != 0) GTEST_SKIP() << "needs the package gcc-avr";
    const LoadedExample it = load_example(DIALPLATE_TREE "/layouts/coast-listener.json");
    const fs::path directory = sources_for(
        it, "sketch-avrxmega3", {"avrxmega3", "ATmega4809", "avr-mapped", ""}, {play::end});
    compile(directory,
            "avr-g++ -mmcu=avrxmega3 -Os -fno-exceptions -fno-rtti -fno-threadsafe-statics "
            "-ffunction-sections -fdata-sections -mrelax -flto -nostartfiles -nostdlib "
            "-Wl,--gc-sections -Wl,-ebegin -Wl,-u,main",
            std::string("-DARDUINO=10819 -DSKETCH='\"coast_listener.ino\"' image.cpp '") +
                portable + "sketch.cpp'",
            std::string("'") + portable + "outside_avr_mapped.cpp' -lgcc -T '" + portable +
                "avr_mapped.ld'");
    const std::string elf = (directory / "firmware.elf").string();
    EXPECT_EQ(run_shell("avr-objdump -d '" + elf + "' | grep -c lpm").output, "0\n");
    const Ran names = run_shell("avr-nm -S '" + elf + "' | grep ' image_bytes\\|11image_bytesE$'");
    std::istringstream in(names.output);
    unsigned long at = 0, size = 0;
    ASSERT_TRUE(in >> std::hex >> at >> size) << names.output;
    EXPECT_EQ(size, it.image.bytes.size());
    // Flash as loads see it: 48 KiB from 0x4000 (data sheet, memories); the linker marks data by 0x800000.
    EXPECT_GE(at, 0x804000UL);
    EXPECT_LE(at + size, 0x810000UL);
    std::cout << run_shell("avr-size -A '" + elf + "'").output;
}

TEST(Crc32OfTheFirmware, IsTheOneOfIeee802Dot3) {
    // The check value that catalogues of checksums give for this one, for the text "123456789".
    Crc32 crc;
    for (const char digit : std::string("123456789"))
        crc.add(static_cast<std::uint8_t>(digit));
    EXPECT_EQ(crc.value(), 0xCBF43926U);
    EXPECT_EQ(crc.bytes(), 9U);
}

}  // namespace
}  // namespace dialplate

// measure_work TREE OUTPUT LAYOUT...: lets the engine draw the same play on the simulated ATmega328P and, under qemu,
// in Cortex-M0+ and Cortex-M3 code, with a display that takes nothing, and writes the instructions there for a cycle
// here: sim/ledger/measured_work.hpp. qemu knows no cycles. Takes half a minute.
#include "sim/emit/emission.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"
#include "tests/firmware/compiled.hpp"
#include "tests/firmware/portable/orders.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <sstream>
#include <string>
#include <unistd.h>
#include <vector>

using namespace dialplate;
namespace fs = std::filesystem;

namespace {

constexpr CycleCount too_long = 20'000'000'000;
constexpr double instructions_per_tick = 40.0;  // see tests/firmware/portable/work.cpp
constexpr double yardstick = 2'000'000.0;       // instructions
constexpr double yardstick_error = 0.001;

[[noreturn]] void give_up(const std::string& why) {
    std::cerr << "measure_work: " << why << '\n';
    std::exit(2);
}

struct Subject {
    Layout layout;
    BuiltImage built;
};

Subject load(const char* file) {
    const Reading reading = load_layout(file);
    const Building building = reading.layout ? build_image(*reading.layout) : Building{};
    if (!building.image) give_up(std::string{file} + " cannot be built");
    Subject it{*reading.layout, *building.image};
    it.layout.mcu.name = "ATmega328P";
    it.layout.mcu.family = "avr";
    return it;
}

void write_code(const Subject& it,
                const std::vector<std::uint8_t>& orders,
                const fs::path& folder) {
    for (const EmittedFile& file : emit(it.layout, it.built, Example::own_driver).files) {
        fs::create_directories((folder / file.name).parent_path());
        std::ofstream(folder / file.name) << file.text;
    }
    std::ofstream out(folder / "orders.cpp");
    out << "#include <stdint.h>\nextern const uint8_t orders[];\nconst uint8_t orders[] = {";
    for (const std::uint8_t byte : orders) {
        out << int{byte} << ',';
    }
    out << "};\n";
}

double avr_cycles(const Toolchain& toolchain,
                  const std::vector<std::uint8_t>& orders,
                  const fs::path& folder,
                  const fs::path& tree) {
    FirmwareSources what;
    what.sources = {folder / "image.cpp", tree / "tests/firmware/portable/work.cpp"};
    what.include_directories = {folder, tree};
    what.output = folder / "avr.elf";
    const std::string complaint = build_firmware(toolchain, what);
    if (!complaint.empty()) give_up(complaint);
    Board board{BoardOptions{}};
    if (const auto wrong = board.load(what.output)) give_up(*wrong);
    board.feed(orders);
    for (int mark = 0; mark < 2; ++mark) {
        if (board.run_until_mark(too_long) != Stop::mark) give_up("the AVR came to no end");
    }
    return static_cast<double>(board.marks()[1].at - board.marks()[0].at);
}

double instructions(const std::string& cpu, const fs::path& folder, const fs::path& tree) {
    const std::string portable = (tree / "tests/firmware/portable/").string();
    const std::string elf = (folder / (cpu + ".elf")).string();
    const ProgramResult built = run_program({"arm-none-eabi-g++",
                                             "-mthumb",
                                             "-mcpu=" + cpu,
                                             "-std=c++14",
                                             "-Os",
                                             "-ffreestanding",
                                             "-fno-exceptions",
                                             "-fno-rtti",
                                             "-fno-threadsafe-statics",
                                             "-ffunction-sections",
                                             "-fdata-sections",
                                             "-nostartfiles",
                                             "-nostdlib",
                                             "-Wl,--gc-sections",
                                             "-I" + folder.string(),
                                             "-I" + tree.string(),
                                             (folder / "image.cpp").string(),
                                             (folder / "orders.cpp").string(),
                                             portable + "work.cpp",
                                             portable + "outside_cortex_m.cpp",
                                             "-lgcc",
                                             "-T",
                                             portable + "cortex_m.ld",
                                             "-o",
                                             elf});
    if (built.status != 0) give_up(built.output);
    // A Cortex-M3 takes the instructions of a Cortex-M0+ too.
    const ProgramResult ran = run_program({"qemu-system-arm",
                                           "-machine",
                                           "mps2-an385",
                                           "-icount",
                                           "shift=0",
                                           "-nographic",
                                           "-monitor",
                                           "none",
                                           "-serial",
                                           "none",
                                           "-semihosting-config",
                                           "enable=on,target=native",
                                           "-kernel",
                                           elf});
    std::istringstream in(ran.output);
    std::string play, stick;
    double ticks = 0.0, stick_ticks = 0.0;
    if (!(in >> play >> ticks >> stick >> stick_ticks)) give_up("qemu: " + ran.output);
    if (std::abs(stick_ticks * instructions_per_tick / yardstick - 1.0) > yardstick_error) {
        give_up("qemu counts two million instructions as " +
                std::to_string(stick_ticks * instructions_per_tick));
    }
    return ticks * instructions_per_tick;
}

double median(std::vector<double> numbers) {
    std::sort(numbers.begin(), numbers.end());
    const std::size_t half = numbers.size() / 2;
    return numbers.size() % 2 == 1 ? numbers[half] : (numbers[half - 1] + numbers[half]) / 2;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) {
        std::cerr << "usage: measure_work TREE OUTPUT LAYOUT...\n";
        return 2;
    }
    const fs::path tree = argv[1];
    const std::optional<Toolchain> toolchain = find_toolchain();
    if (!toolchain || !Compiler::installed("cortex-m3")) {
        give_up("needs the packages gcc-avr, avr-libc, gcc-arm-none-eabi and qemu-system-arm");
    }
    const fs::path folder =
        fs::temp_directory_path() / ("measure_work." + std::to_string(getpid()));
    const std::vector<std::string> families = {"cortex-m0plus", "cortex-m3"};
    std::vector<std::vector<double>> ratios(families.size());
    for (int i = 3; i < argc; ++i) {
        const Subject it = load(argv[i]);
        const std::vector<std::uint8_t> orders = orders_for(it.layout);
        write_code(it, orders, folder);
        const double here = avr_cycles(*toolchain, orders, folder, tree);
        for (std::size_t f = 0; f < families.size(); ++f) {
            const double there = instructions(families[f], folder, tree);
            ratios[f].push_back(there / here);
            std::cerr << argv[i] << ": " << here << " cycles, " << families[f] << ' ' << there
                      << " instructions, " << there / here << '\n';
        }
        fs::remove_all(folder);
    }
    std::ofstream out(argv[2]);
    out << "// Written by tests/firmware/measure_work.cpp from firmware run under qemu; not edited "
           "by hand.\n"
           "#pragma once\n\nnamespace dialplate::measured {\n\n"
           "/// Instructions that the engine's own work takes on another family, for a cycle of "
           "the same on\n"
           "/// the ATmega328P.\n"
           "struct FamilyWork {\n"
           "    const char* family;      ///< As in layouts/parts/mcus.json.\n"
           "    double instructions;     ///< Median over the layouts.\n"
           "    double least, greatest;  ///< Of them.\n"
           "};\n\ninline constexpr int work_layouts = "
        << argc - 3 << ";\n\ninline constexpr FamilyWork family_work[] = {\n";
    for (std::size_t f = 0; f < families.size(); ++f) {
        char numbers[60];
        std::snprintf(numbers,
                      sizeof numbers,
                      "%.3f, %.3f, %.3f",
                      median(ratios[f]),
                      *std::min_element(ratios[f].begin(), ratios[f].end()),
                      *std::max_element(ratios[f].begin(), ratios[f].end()));
        out << "    {\"" << families[f] << "\", " << numbers << "},\n";
    }
    out << "};\n\n}  // namespace dialplate::measured\n";
    return out.good() ? 0 : 1;
}

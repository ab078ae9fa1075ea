// measure_ratios TREE OUTPUT LAYOUT...: compiles the engine with the parts of each layout, and with all parts, for
// the ATmega328P and for every other family that a compiler is there for, and writes sim/ledger/measured_ratios.hpp.
// Takes half a minute.
#include "sim/layout/reader.hpp"
#include "tests/firmware/compiled.hpp"

#include <algorithm>
#include <fstream>
#include <iostream>
#include <string>
#include <vector>

using namespace dialplate;

namespace {

struct Family {
    const char* name;  ///< As in layouts/parts/mcus.json.
    const char* mcu;   ///< As Build has it.
    const char* flags;
};
constexpr Family families[] = {
    {"avr-mapped", "avrxmega3", "-Os -flto -mrelax -mcall-prologues -mmcu=avrxmega3"},
    {"cortex-m0plus", "cortex-m0plus", "-Os -mcpu=cortex-m0plus"},
    {"cortex-m3", "cortex-m3", "-Os -mcpu=cortex-m3"},
};

std::vector<PartSet> engines_of(int count, char** files) {
    std::vector<PartSet> engines = {PartSet{(1U << part_count) - 1}};
    for (int i = 0; i < count; ++i) {
        const Reading reading = load_layout(files[i]);
        const Building building = reading.layout ? build_image(*reading.layout) : Building{};
        if (!building.image) {
            std::cerr << files[i] << ": cannot be built\n";
            std::exit(2);
        }
        const PartSet parts = parts_used(*reading.layout, *building.image);
        if (std::find(engines.begin(), engines.end(), parts) == engines.end()) {
            engines.push_back(parts);
        }
    }
    return engines;
}

double median(std::vector<double> numbers) {
    std::sort(numbers.begin(), numbers.end());
    const std::size_t half = numbers.size() / 2;
    return numbers.size() % 2 == 1 ? numbers[half] : (numbers[half - 1] + numbers[half]) / 2;
}

std::vector<double> sizes(const Compiler& compiler,
                          const std::vector<PartSet>& engines,
                          const char* mcu) {
    const int bare = compiler.compile({.engine = false, .mcu = mcu}).flash;
    std::vector<double> all;
    for (const PartSet parts : engines) {
        all.push_back(compiler.compile({.parts = parts, .mcu = mcu}).flash - bare);
        std::cerr << mcu << ": " << all.back() << '\n';
    }
    return all;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) {
        std::cerr << "usage: measure_ratios TREE OUTPUT LAYOUT...\n";
        return 2;
    }
    for (const char* mcu : {"atmega328p", "cortex-m3"}) {
        if (!Compiler::installed(mcu)) {
            std::cerr << "needs the packages gcc-avr, avr-libc and gcc-arm-none-eabi\n";
            return 2;
        }
    }
    const Compiler compiler{argv[1]};
    const std::vector<PartSet> engines = engines_of(argc - 3, argv + 3);
    const std::vector<double> here = sizes(compiler, engines, "atmega328p");

    std::ofstream out(argv[2]);
    out << "// Written by tests/firmware/measure_ratios.cpp from compiled code; not edited by "
           "hand.\n"
           "#pragma once\n\nnamespace dialplate::measured {\n\n"
           "/// How large the engine is for another family, against the same for the ATmega328P.\n"
           "struct FamilyRatio {\n"
           "    const char* family;     ///< As in layouts/parts/mcus.json.\n"
           "    const char* toolchain;\n"
           "    double engine;           ///< Median over the engines.\n"
           "    double least, greatest;  ///< Of them.\n"
           "    int state;  ///< Bytes of RAM of the engine with all parts, without its arena.\n"
           "    int stack;  ///< Bytes of its longest path of calls from the service function on.\n"
           "};\n\n/// Engines compiled for each: with all parts, and with those of each example.\n"
        << "inline constexpr int ratio_engines = " << engines.size() << ";\n\n"
        << "inline constexpr FamilyRatio family_ratios[] = {\n";
    for (const Family& family : families) {
        const std::vector<double> there = sizes(compiler, engines, family.mcu);
        std::vector<double> ratios;
        for (std::size_t i = 0; i < there.size(); ++i) {
            ratios.push_back(there[i] / here[i]);
        }
        const Compiled whole = compiler.compile({.parts = engines.front(), .mcu = family.mcu});
        char numbers[100];
        std::snprintf(numbers,
                      sizeof numbers,
                      "%.3f, %.3f, %.3f, %d, %d",
                      median(ratios),
                      *std::min_element(ratios.begin(), ratios.end()),
                      *std::max_element(ratios.begin(), ratios.end()),
                      whole.state,
                      whole.stack);
        out << "    {\"" << family.name << "\", \"" << Compiler::version(family.mcu) << ' '
            << family.flags << "\", " << numbers << "},\n";
    }
    out << "};\n\n}  // namespace dialplate::measured\n";
    return out.good() ? 0 : 1;
}

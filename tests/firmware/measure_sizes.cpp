// measure_sizes TREE OUTPUT: compiles the engine many times with parts, drivers and touch sheets drawn at random, fits the terms of
// sim/ledger/size_terms.cpp to the sizes, and writes sim/ledger/measured_sizes.hpp. Takes some minutes.
#include "sim/ledger/size_terms.hpp"
#include "tests/firmware/compiled.hpp"
#include "tests/firmware/least_squares.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <random>
#include <string>
#include <thread>
#include <utility>
#include <vector>

using namespace dialplate;

namespace {

constexpr int samples = 600;
constexpr int held_out = 100;
/// An error of one size, squared, over that of a weight: terms that mostly go together share what they weigh.
constexpr double doubt = 0.01;
constexpr std::uint32_t all_parts = (1U << part_count) - 1;

struct Sample {
    DisplayProgram program;
    double bytes = 0.0;
    double stack = 0.0;
};

/// A set of parts such as a layout has: most kinds, most packings, their trimmings now and then.
PartSet random_parts(std::mt19937& random) {
    const auto often = [&random](double share) {
        return static_cast<double>(random() % 10'000) < 10'000.0 * share;
    };
    PartSet parts;
    parts.add(Part::readout, often(0.8)).add(Part::box, often(0.8)).add(Part::meter, often(0.6));
    parts.add(Part::scale, often(0.45)).add(Part::picture, often(0.35));
    parts.add(Part::plain, often(0.5)).add(Part::runs, often(0.75)).add(Part::segment, often(0.35));
    parts.add(Part::context, often(0.4));
    parts.add(Part::tones_plain, often(0.15)).add(Part::tones_context, often(0.3));
    parts.add(Part::smooth, often(0.7));
    parts.add(Part::changed_runs, often(0.4));
    parts.add(Part::enlarged, often(0.45)).add(Part::tuning_digit, often(0.6));
    parts.add(Part::sign, often(0.3)).add(Part::rounded, often(0.6)).add(Part::words, often(0.5));
    parts.add(Part::touch, often(0.8)).add(Part::hold, often(0.6)).add(Part::pages, often(0.6));
    parts.add(Part::peak, often(0.5)).add(Part::blocks, often(0.5)).add(Part::upright, often(0.3));
    parts.add(Part::tape, often(0.6));
    // Somebody has to draw the packings, and something has to be drawn.
    if (!parts.has(Part::plain) && !parts.has(Part::runs) && !parts.has(Part::segment) &&
        !parts.has(Part::context)) {
        parts.add(Part::runs);
    }
    return effective(parts);
}

/// As a layout has them: mostly the drivers of small displays, and a touch sheet where there are keys.
DisplayProgram random_program(std::mt19937& random) {
    DisplayProgram program;
    program.parts = random_parts(random);
    constexpr std::optional<BusKind> buses[] = {std::nullopt,
                                                BusKind::spi,
                                                BusKind::spi_timed,
                                                BusKind::spi_timed,
                                                BusKind::spi_timed,
                                                BusKind::usart_spi,
                                                BusKind::usart_spi,
                                                BusKind::parallel8};
    program.bus = buses[random() % std::size(buses)];
    // Standards BUS-09: parallel buses take 16 bits.
    const bool three = program.bus && program.bus != BusKind::parallel8 && random() % 5 == 0;
    program.bytes_per_pixel = three ? 3 : 2;
    program.touch_sheet = program.bus && program.parts.has(Part::touch);
    return program;
}

std::vector<double> fit(const std::vector<Sample>& measured, double Sample::*size) {
    const std::size_t count = size_terms(DisplayProgram{}).size();
    LeastSquares squares(std::vector<bool>(count, true));
    for (const Sample& sample : measured) {
        const std::vector<SizeTerm> all = size_terms(sample.program);
        std::vector<std::pair<int, double>> terms;
        for (std::size_t i = 0; i < count; ++i) {
            if (all[i].holds) terms.emplace_back(static_cast<int>(i), 1.0);
        }
        squares.add(terms, sample.*size, 1.0);
    }
    std::vector<double> doubts(count, doubt);
    doubts[0] = 0.0;
    constexpr int sweeps = 20'000;
    std::vector<double> weights = squares.solve(1e-9, doubts, sweeps);
    for (double& weight : weights) {
        weight = std::round(weight);
    }
    return weights;
}

double predicted(const std::vector<double>& weights, const DisplayProgram& program) {
    const std::vector<SizeTerm> terms = size_terms(program);
    double bytes = 0.0;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        bytes += terms[i].holds ? weights[i] : 0.0;
    }
    return bytes;
}

std::vector<double> relative_errors(const std::vector<double>& weights,
                                    const std::vector<Sample>& measured) {
    std::vector<double> errors;
    for (const Sample& sample : measured) {
        errors.push_back(std::abs(predicted(weights, sample.program) - sample.bytes) /
                         sample.bytes);
    }
    std::sort(errors.begin(), errors.end());
    return errors;
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 3) {
        std::cerr << "usage: measure_sizes TREE OUTPUT\n";
        return 2;
    }
    const Compiler compiler{argv[1]};
    const int bare = compiler.compile({.engine = false}).flash;
    std::mt19937 random(328);
    std::vector<Sample> measured;
    for (int i = 0; i < samples + held_out; ++i) {
        measured.push_back({random_program(random)});
    }
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = 0; (i = next++) < measured.size();) {
            const Compiled compiled = compiler.compile(build_of(measured[i].program));
            measured[i].bytes = compiled.flash - bare;
            measured[i].stack = compiled.stack;
            if (i % 40 == 0) std::fprintf(stderr, "%zu of %zu\n", i, measured.size());
        }
    };
    std::vector<std::thread> threads;
    for (unsigned t = 0; t < std::max(1U, std::thread::hardware_concurrency()); ++t) {
        threads.emplace_back(work);
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    const std::vector<Sample> kept(measured.end() - held_out, measured.end());
    measured.resize(samples);
    const std::vector<double> for_judging = fit(measured, &Sample::bytes);
    const std::vector<double> stack_for_judging = fit(measured, &Sample::stack);
    double too_little = 0.0;
    for (const Sample& sample : kept) {
        too_little =
            std::max(too_little, sample.stack - predicted(stack_for_judging, sample.program));
    }
    const std::vector<double> inside = relative_errors(for_judging, measured);
    const std::vector<double> outside = relative_errors(for_judging, kept);
    // Judged; now all of them may take part.
    measured.insert(measured.end(), kept.begin(), kept.end());
    const std::vector<double> weights = fit(measured, &Sample::bytes);
    const std::vector<double> stack = fit(measured, &Sample::stack);
    std::cerr << "fitted: worst " << 100 * inside.back() << " %; held out: median "
              << 100 * outside[outside.size() / 2] << " %, worst " << 100 * outside.back()
              << " %\n";

    const Compiled whole = compiler.compile({.parts = PartSet{all_parts}});
    const Compiled large = compiler.compile({.parts = PartSet{all_parts}, .mcu = "atmega2560"});
    const int large_bare = compiler.compile({.engine = false, .mcu = "atmega2560"}).flash;

    std::ofstream out(argv[2]);
    out << "// Written by tests/firmware/measure_sizes.cpp from compiled code; not edited by "
           "hand.\n"
           "#pragma once\n\n#include \"sim/layout/layout.hpp\"\n\nnamespace dialplate::measured "
           "{\n\n"
        << "inline constexpr const char* part = \"ATmega328P\";\n"
        << "inline constexpr const char* toolchain =\n    \"" << compiler.version()
        << " -Os -flto -mrelax -mcall-prologues for the ATmega328P\";\n\n"
        << "/// Programs compiled for the fit, and others to judge it by.\n"
        << "inline constexpr int samples = " << samples << ";\n"
        << "inline constexpr int held_out = " << held_out << ";\n"
        << "/// Greatest, nine-of-ten and median error of a predicted size among those held out, "
           "as a part of "
           "it.\n"
        << "inline constexpr double worst_error = " << outside.back() << ";\n"
        << "inline constexpr double nine_of_ten_error = " << outside[outside.size() * 9 / 10]
        << ";\n"
        << "inline constexpr double median_error = " << outside[outside.size() / 2] << ";\n\n"
        << "/// Bytes of flash for each of size_terms().\n"
        << "// clang-format off\ninline constexpr double flash_terms[] = {";
    for (std::size_t i = 0; i < weights.size(); ++i) {
        out << (i % 12 == 0 ? "\n    " : " ") << weights[i] << ',';
    }
    out << "\n};\n// clang-format on\n\n"
        << "/// RAM of the engine with all parts, without its arena.\n"
        << "inline constexpr int engine_state = " << whole.state << ";\n"
        << "/// Longest path of calls below main: bytes for each of size_terms(), and by how much "
           "they were too few at most for a program held out.\n// clang-format off\n"
           "inline constexpr double stack_terms[] = {";
    for (std::size_t i = 0; i < stack.size(); ++i) {
        out << (i % 12 == 0 ? "\n    " : " ") << stack[i] << ',';
    }
    out << "\n};\n// clang-format on\n"
        << "inline constexpr double stack_margin = " << too_little << ";\n"
        << "/// The same of the engine with all parts, return addresses included.\n"
        << "inline constexpr int stack = " << whole.stack << ";\n\n"
        << "/// What the whole engine grows by on a part with more than 128 KiB.\n"
        << "inline constexpr const char* large_avr_part = \"ATmega2560\";\n"
        << "inline constexpr double large_avr_factor = "
        << static_cast<double>(large.flash - large_bare) / (whole.flash - bare) << ";\n\n"
        << "}  // namespace dialplate::measured\n";
    return out.good() ? 0 : 1;
}

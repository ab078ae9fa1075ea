// measure_sizes TREE OUTPUT: compiles the engine many times with parts drawn at random, fits the terms of
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
constexpr int held_out = 60;
// An error of one size, squared, over that of a weight: what a known group weighs is likely to be more.
constexpr double doubt_of_expected = 0.3, doubt_of_pairs = 10.0;
constexpr std::uint32_t all_parts = (1U << part_count) - 1;

struct Sample {
    PartSet parts;
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

std::vector<double> fit(const std::vector<Sample>& measured, double Sample::*size) {
    LeastSquares squares(std::vector<bool>(size_terms(PartSet{}).size(), true));
    for (const Sample& sample : measured) {
        const std::vector<double> all = size_terms(sample.parts);
        std::vector<std::pair<int, double>> terms;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (all[i] != 0.0) terms.emplace_back(static_cast<int>(i), all[i]);
        }
        squares.add(terms, sample.*size, 1.0);
    }
    std::vector<double> doubt(size_terms(PartSet{}).size());
    for (std::size_t i = 1 + part_count; i < doubt.size(); ++i) {
        doubt[i] = is_expected(i) ? doubt_of_expected : doubt_of_pairs;
    }
    constexpr int sweeps = 6000;
    std::vector<double> weights = squares.solve(1e-9, doubt, sweeps);
    for (double& weight : weights) {
        weight = std::round(weight);
    }
    return weights;
}

double predicted(const std::vector<double>& weights, PartSet parts) {
    const std::vector<double> terms = size_terms(parts);
    double bytes = 0.0;
    for (std::size_t i = 0; i < terms.size(); ++i) {
        bytes += terms[i] * weights[i];
    }
    return bytes;
}

std::vector<double> relative_errors(const std::vector<double>& weights,
                                    const std::vector<Sample>& measured) {
    std::vector<double> errors;
    for (const Sample& sample : measured) {
        errors.push_back(std::abs(predicted(weights, sample.parts) - sample.bytes) / sample.bytes);
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
        measured.push_back({random_parts(random)});
    }
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = 0; (i = next++) < measured.size();) {
            const Compiled compiled = compiler.compile({.parts = measured[i].parts});
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
            std::max(too_little, sample.stack - predicted(stack_for_judging, sample.parts));
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
        << "/// Engines compiled for the fit, and others to judge it by.\n"
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
        << "// clang-format off\ninline constexpr double engine_terms[] = {";
    for (std::size_t i = 0; i < weights.size(); ++i) {
        out << (i % 12 == 0 ? "\n    " : " ") << weights[i] << ',';
    }
    out << "\n};\n// clang-format on\n\n"
        << "/// Some links decide glyphs in `context` themselves; then the engine needs less.\n"
        << "struct Driver {\n    BusKind kind;\n    int bytes_per_pixel;\n    int bytes;\n"
           "    int with_contexts;  ///< If there are such, and a face is enlarged.\n"
           "    int with_contexts_alone;  ///< No face is enlarged; some are in tones, in "
           "context.\n"
           "    int with_nothing_else;  ///< Nor is anything in tones in context.\n};\n"
        << "inline constexpr Driver drivers[] = {\n";
    struct Kind {
        const char* name;
        BusKind kind;
        int number;
    };
    const auto less = [](PartSet parts, Part part) {
        return PartSet{parts.bits & ~(std::uint32_t{1} << static_cast<unsigned>(part))};
    };
    const PartSet with{all_parts}, without = less(with, Part::context),
                                   alone = less(with, Part::enlarged),
                                   nothing_else = less(alone, Part::tones_context);
    for (const Kind& kind : {Kind{"spi", BusKind::spi, 1},
                             Kind{"spi_timed", BusKind::spi_timed, 2},
                             Kind{"usart_spi", BusKind::usart_spi, 3},
                             Kind{"parallel8", BusKind::parallel8, 4}}) {
        for (const int pixel : {2, 3}) {
            if (kind.kind == BusKind::parallel8 && pixel == 3) {
                continue;  // standards BUS-09: parallel buses take 16 bits
            }
            const auto driven = [&](PartSet parts) {
                return compiler
                           .compile(
                               {.parts = parts, .driver = kind.number, .bytes_per_pixel = pixel})
                           .flash -
                       compiler.compile({.parts = parts}).flash;
            };
            out << "    {BusKind::" << kind.name << ", " << pixel << ", " << driven(without) << ", "
                << driven(with) << ", " << driven(alone) << ", " << driven(nothing_else) << "},\n";
        }
    }
    // What it takes depends a little on what the compiler keeps in registers around it.
    std::vector<int> touch;
    constexpr std::size_t touch_samples = 9;
    for (std::size_t i = 0; i < measured.size() && touch.size() < touch_samples; ++i) {
        const PartSet parts = measured[i].parts;
        if (!parts.has(Part::touch)) continue;
        const auto flash = [&](bool felt) {
            return compiler.compile({.parts = parts, .driver = 2, .touch = felt}).flash;
        };
        touch.push_back(flash(true) - flash(false));
    }
    std::sort(touch.begin(), touch.end());
    out << "};\n\n"
        << "/// Reading the touch sheet with its calibration, in place of a finger from two "
           "registers: the median of some engines.\n"
        << "inline constexpr int touch_reading = " << touch[touch.size() / 2] << ";\n\n"
        << "/// RAM of the engine with all parts, without its arena.\n"
        << "inline constexpr int engine_state = " << whole.state << ";\n"
        << "/// Longest path of calls below main: bytes for each of size_terms(), and by how much "
           "they were too few at most for an engine held out.\n// clang-format off\n"
           "inline constexpr double stack_terms[] = {";
    for (std::size_t i = 0; i < stack.size(); ++i) {
        out << (i % 12 == 0 ? "\n    " : " ") << stack[i] << ',';
    }
    out << "\n};\n// clang-format on\n"
        << "inline constexpr double stack_margin = " << too_little << ";\n"
        << "/// What comes on top where the bus sends glyphs in `context` by itself.\n"
        << "inline constexpr int stack_of_contexts = "
        << compiler.compile({.parts = with, .driver = 2}).stack - whole.stack << ";\n"
        << "/// The same of the engine with all parts, return addresses included.\n"
        << "inline constexpr int stack = " << whole.stack << ";\n\n"
        << "/// What the whole engine grows by on a part with more than 128 KiB.\n"
        << "inline constexpr const char* large_avr_part = \"ATmega2560\";\n"
        << "inline constexpr double large_avr_factor = "
        << static_cast<double>(large.flash - large_bare) / (whole.flash - bare) << ";\n\n"
        << "}  // namespace dialplate::measured\n";
    return out.good() ? 0 : 1;
}

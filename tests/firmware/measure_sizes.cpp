// measure_sizes TREE OUTPUT: compiles the engine many times with parts, drivers and touch sheets drawn at random, fits the terms of
// sim/ledger/size_terms.cpp to the sizes and those of stack_paths.cpp to the stacks, and writes sim/ledger/measured_sizes.hpp. Takes about a quarter of an hour.
#include "sim/ledger/size_terms.hpp"
#include "sim/ledger/stack_paths.hpp"
#include "tests/firmware/compiled.hpp"
#include "tests/firmware/least_squares.hpp"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <initializer_list>
#include <iostream>
#include <iterator>
#include <random>
#include <string>
#include <thread>
#include <utility>
#include <vector>

using namespace dialplate;

namespace {

constexpr int samples = 1200;
constexpr int held_out = 200;
/// An error of one size, squared, over that of a weight: terms that mostly go together share what they weigh.
constexpr double doubt = 0.1;
/// A program of so many bytes counts 1, one of half as many 4: what is promised is a share of the size.
constexpr double usual_bytes = 8000.0;
constexpr std::uint32_t all_parts = (1U << part_count) - 1;

struct Sample {
    DisplayProgram program;
    double bytes = 0.0;
    double stack = 0.0;
};

/// A set of parts such as a layout has, from one kind of item with one packing to nearly everything: small displays
/// are no less common than full ones.
PartSet random_parts(std::mt19937& random) {
    const auto draw = [&random] { return static_cast<double>(random() % 10'000) / 10'000.0; };
    const auto often = [&draw](double share) { return draw() < share; };
    const double fullness = often(0.25) ? 1.0 : 0.15 + 0.85 * draw();
    const auto in_a_full_one = [&](double share) { return often(share * fullness); };
    PartSet parts;
    for (const auto& [part, share] : {std::pair{Part::readout, 0.9},
                                      {Part::box, 0.9},
                                      {Part::meter, 0.7},
                                      {Part::scale, 0.6},
                                      {Part::picture, 0.45},
                                      {Part::plain, 0.5},
                                      {Part::runs, 0.75},
                                      {Part::segment, 0.4},
                                      {Part::context, 0.5},
                                      {Part::tones_plain, 0.2},
                                      {Part::tones_context, 0.35}})
        parts.add(part, in_a_full_one(share));
    for (const auto& [part, share] : {std::pair{Part::smooth, 0.7},
                                      {Part::changed_runs, 0.4},
                                      {Part::enlarged, 0.45},
                                      {Part::tuning_digit, 0.5},
                                      {Part::sign, 0.4},
                                      {Part::rounded, 0.6},
                                      {Part::words, 0.5},
                                      {Part::touch, 0.7},
                                      {Part::hold, 0.6},
                                      {Part::pages, 0.6},
                                      {Part::peak, 0.5},
                                      {Part::blocks, 0.5},
                                      {Part::upright, 0.4},
                                      {Part::tape, 0.6}})
        parts.add(part, often(share));

    // Something has to be drawn, numbers need a face, a picture its packing, and tones are of faces or of pictures.
    const auto any = [&parts](std::initializer_list<Part> group) {
        return std::any_of(
            group.begin(), group.end(), [&parts](Part part) { return parts.has(part); });
    };
    if (!any({Part::readout, Part::box, Part::meter, Part::scale, Part::picture})) {
        constexpr Part kinds[] = {Part::readout, Part::box, Part::meter, Part::scale};
        parts.add(kinds[random() % std::size(kinds)]);
    }
    const bool tones = any({Part::tones_plain, Part::tones_context});
    if (!parts.has(Part::picture)) parts.add(Part::smooth, tones);
    const bool bitmaps = any({Part::plain, Part::runs, Part::context});
    const bool faces = bitmaps || parts.has(Part::segment) || (tones && parts.has(Part::smooth));
    const bool numbers =
        parts.has(Part::readout) || (parts.has(Part::scale) && parts.has(Part::tape));
    if ((!faces && (numbers || often(0.3))) || (parts.has(Part::picture) && !bitmaps && !tones)) {
        constexpr Part packings[] = {Part::plain, Part::runs, Part::runs, Part::context};
        parts.add(packings[random() % std::size(packings)]);
    }
    return effective(parts);
}

/// As a layout has them: mostly the drivers of small displays, and a touch sheet where there are keys.
DisplayProgram random_program(std::mt19937& random) {
    DisplayProgram program;
    program.parts = random_parts(random);
    constexpr std::optional<BusKind> buses[] = {std::nullopt,
                                                BusKind::spi,
                                                BusKind::spi,
                                                BusKind::spi_timed,
                                                BusKind::spi_timed,
                                                BusKind::spi_timed,
                                                BusKind::usart_spi,
                                                BusKind::usart_spi,
                                                BusKind::parallel8,
                                                BusKind::parallel8};
    program.bus = buses[random() % std::size(buses)];
    // Standards BUS-09: parallel buses take 16 bits.
    const bool three = program.bus && program.bus != BusKind::parallel8 && random() % 4 == 0;
    program.bytes_per_pixel = three ? 3 : 2;
    program.touch_sheet = program.bus && program.parts.has(Part::touch);
    // Of glyphs mostly, now and then of a wide picture.
    program.context_columns =
        static_cast<int>(random() % 4 != 0 ? 1 + random() % 72 : 73 + random() % 181);
    return program;
}

std::vector<double> fit(const std::vector<Sample>& measured) {
    const std::size_t count = size_terms(DisplayProgram{}).size();
    LeastSquares squares(std::vector<bool>(count, true));
    for (const Sample& sample : measured) {
        const std::vector<SizeTerm> all = size_terms(sample.program);
        std::vector<std::pair<int, double>> terms;
        for (std::size_t i = 0; i < count; ++i) {
            if (all[i].holds) terms.emplace_back(static_cast<int>(i), 1.0);
        }
        const double share = usual_bytes / sample.bytes;
        squares.add(terms, sample.bytes, share * share);
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

/// About how many bytes the terms of the stack are, to begin with: which paths are the deep ones.
std::vector<double> first_guess() {
    std::vector<double> guess(stack_term::count);
    const auto about = [&guess](int term, double bytes) {
        guess[static_cast<std::size_t>(term)] = bytes;
    };
    about(stack_term::service, 80);
    about(stack_term::readout, 80);
    about(stack_term::box, 50);
    about(stack_term::scale, 40);
    about(stack_term::scale_with_tape, 60);
    about(stack_term::picture, 20);
    about(stack_term::change, 120);
    about(stack_term::plain, 100);
    about(stack_term::runs, 60);
    about(stack_term::context, 100);
    about(stack_term::sent_context, 90);
    about(stack_term::segment, 60);
    about(stack_term::plain_tones, 90);
    about(stack_term::context_tones, 150);
    about(stack_term::changed_bitmap, 190);
    about(stack_term::changed_segments, 60);
    return guess;
}

const StackPath& deepest_of(const std::vector<StackPath>& paths,
                            const std::vector<double>& weights) {
    return *std::max_element(
        paths.begin(), paths.end(), [&](const StackPath& a, const StackPath& b) {
            return depth_of(a, weights.data()) < depth_of(b, weights.data());
        });
}

/// Fits the paths that are the deepest by the weights, finds with the new weights which are, and so on.
std::vector<double> fit_stack(const std::vector<Sample>& measured) {
    constexpr int rounds = 25, sweeps = 3000;
    // Bytes: of an error over those of a weight, squared, as above.
    constexpr double stack_doubt = 0.3;
    std::vector<std::vector<StackPath>> paths;
    for (const Sample& sample : measured)
        paths.push_back(stack_paths(sample.program));
    const auto error = [&](const std::vector<double>& weights) {
        double sum = 0.0;
        for (std::size_t i = 0; i < measured.size(); ++i)
            sum += std::abs(deepest(paths[i], weights.data()) - measured[i].stack);
        return sum;
    };
    std::vector<double> weights = first_guess(), best = weights;
    for (int round = 0; round < rounds; ++round) {
        LeastSquares squares(std::vector<bool>(stack_term::count, true));
        for (std::size_t i = 0; i < measured.size(); ++i) {
            const StackPath& path = deepest_of(paths[i], weights);
            std::vector<std::pair<int, double>> terms;
            for (const int term : path.terms)
                terms.emplace_back(term, 1.0);
            squares.add(terms, measured[i].stack - path.history, 1.0);
        }
        std::vector<double> doubts(stack_term::count, stack_doubt);
        doubts[stack_term::service] = 0.0;
        weights = squares.solve(1e-9, doubts, sweeps);
        if (error(weights) < error(best)) best = weights;
    }
    for (double& weight : best)
        weight = std::round(weight);
    return best;
}

/// Predicted less measured, in bytes.
std::vector<double> stack_errors(const std::vector<double>& weights,
                                 const std::vector<Sample>& measured) {
    std::vector<double> errors;
    for (const Sample& sample : measured)
        errors.push_back(deepest(stack_paths(sample.program), weights.data()) - sample.stack);
    return errors;
}

void write_table(std::ostream& out, const char* name, const std::vector<double>& weights) {
    out << "// clang-format off\ninline constexpr double " << name << "[] = {";
    for (std::size_t i = 0; i < weights.size(); ++i) {
        out << (i % 12 == 0 ? "\n    " : " ") << weights[i] << ',';
    }
    out << "\n};\n// clang-format on\n";
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
    const std::vector<double> for_judging = fit(measured);
    const std::vector<double> inside = relative_errors(for_judging, measured);
    const std::vector<double> outside = relative_errors(for_judging, kept);
    std::vector<double> stack_outside = stack_errors(fit_stack(measured), kept);
    const double too_little =
        std::max(0.0, -*std::min_element(stack_outside.begin(), stack_outside.end()));
    for (double& error : stack_outside)
        error = std::abs(error);
    std::sort(stack_outside.begin(), stack_outside.end());
    // Judged; now all of them may take part.
    measured.insert(measured.end(), kept.begin(), kept.end());
    const std::vector<double> weights = fit(measured);
    const std::vector<double> stack = fit_stack(measured);
    const auto share = [](const std::vector<double>& sorted, std::size_t tenths) {
        return sorted[std::min(sorted.size() - 1, sorted.size() * tenths / 10)];
    };
    std::cerr << "fitted: worst " << 100 * inside.back() << " %; held out: median "
              << 100 * share(outside, 5) << " %, worst " << 100 * outside.back()
              << " %; stack: median " << share(stack_outside, 5) << ", nine of ten "
              << share(stack_outside, 9) << ", worst " << stack_outside.back() << " bytes, "
              << too_little << " too few at most\n";

    // The sheet needs a driver; what the driver is makes no difference to the state.
    const PartSet no_segments{all_parts & ~(1U << static_cast<unsigned>(Part::segment))};
    const Compiled whole = compiler.compile({.parts = PartSet{all_parts}});
    const Compiled without_segments = compiler.compile({.parts = no_segments});
    const Compiled driven = compiler.compile({.parts = PartSet{all_parts}, .driver = 1});
    const Compiled touched =
        compiler.compile({.parts = PartSet{all_parts}, .driver = 1, .touch = true});
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
        << "/// Bytes of flash for each of size_terms().\n";
    write_table(out, "flash_terms", weights);
    out << "\n/// RAM of the engine without segments, without its arena; what segments and reading "
           "the "
           "touch sheet add.\n"
        << "inline constexpr int engine_state = " << without_segments.state
        << ", segment_state = " << whole.state - without_segments.state
        << ", touch_state = " << touched.state - driven.state << ";\n"
        << "/// Stack from the service function on: bytes for each of stack_term.\n";
    write_table(out, "stack_terms", stack);
    out << "/// Errors of a predicted stack among the programs held out, in bytes; and by how much "
           "it was "
           "too low at most.\n"
        << "inline constexpr double stack_median_error = " << share(stack_outside, 5)
        << ", stack_nine_of_ten_error = " << share(stack_outside, 9)
        << ", stack_worst_error = " << stack_outside.back() << ";\n"
        << "inline constexpr double stack_margin = " << too_little << ";\n"
        << "/// Of the engine with all parts.\n"
        << "inline constexpr int stack = " << whole.stack << ";\n\n"
        << "/// What the whole engine grows by on a part with more than 128 KiB; and by how many "
           "bytes its stack, "
           "since return addresses are longer there.\n"
        << "inline constexpr const char* large_avr_part = \"ATmega2560\";\n"
        << "inline constexpr int large_avr_stack = " << large.stack - whole.stack << ";\n"
        << "inline constexpr double large_avr_factor = "
        << static_cast<double>(large.flash - large_bare) / (whole.flash - bare) << ";\n\n"
        << "}  // namespace dialplate::measured\n";
    return out.good() ? 0 : 1;
}

// measure_times TREE OUTPUT LAYOUT...: runs the engine on the simulated ATmega328P, draws the same on the PC, and
// fits what the engine and the drivers take. Writes sim/ledger/measured_times.hpp. Any byte that differs ends it.
//
// Each call of the service function is an equation. What the engine takes is fitted once for all drivers, from
// many made-up layouts and the given ones; what a driver adds, from some of them. First every fourth layout is
// kept out of the fit, and what the predictions of its updates are worth is written down; then all take part.
#include "sim/image/build.hpp"
#include "sim/image/decoder_sizes.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/draw_terms.hpp"
#include "tests/firmware/least_squares.hpp"
#include "tests/firmware/timed_layouts.hpp"
#include "tests/firmware/timed_run.hpp"

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <string>
#include <thread>
#include <vector>

using namespace dialplate;

namespace {

constexpr int made_up = 160;          // layouts
constexpr int for_other_drivers = 9;  // of them; the second driver gets half of all
constexpr int rounds = 4;             // of changes of every value, a page
constexpr int kept_out_every = 4;     // which layouts judge the fit
constexpr double ridge = 1e-5;
// Cycles that count as nothing in an error: services that only find out that nothing is to do.
constexpr double negligible = 400.0;

/// The first is the one that all layouts are run with.
constexpr TimedDriver drivers[] = {{"spi_timed", "timed", BusKind::spi_timed, 2},
                                   {"spi", "polled", BusKind::spi, 2},
                                   {"usart_spi", "usart", BusKind::usart_spi, 2},
                                   {"parallel8", "split", BusKind::parallel8, 2},
                                   {"spi_timed", "timed", BusKind::spi_timed, 3},
                                   {"spi", "polled", BusKind::spi, 3},
                                   {"usart_spi", "usart", BusKind::usart_spi, 3}};
constexpr int driver_count = static_cast<int>(std::size(drivers));
/// A larger part, with a port of its own for the data lines: what its engine takes is a multiple.
constexpr TimedDriver of_large_part = {"parallel8", "whole_port", BusKind::parallel8, 2};
constexpr const char* large_mcu = "atmega2560";
constexpr int on_large_part = driver_count;  // as a driver's number
constexpr int driver_fields = 7, pixel_field = 3, decided_pixel_field = 6;

/// Cycles of a pixel where they are certain, by the driver's own counting: 0 elsewhere.
double certain_pixel(const TimedDriver& driver) {
    if (driver.kind == BusKind::spi_timed) return 18.0 * driver.bytes_per_pixel;
    if (driver.kind == BusKind::usart_spi) return 16.0 * driver.bytes_per_pixel;
    return 0.0;
}

struct Subject {
    Layout layout;
    BuiltImage built;
};

/// A run of a layout with a driver.
struct Job {
    int subject = 0, driver = 0;
    TimedRun run;
};

std::array<double, driver_fields> fields(const DriverTerms& terms) {
    return {terms.windows,
            terms.pushes,
            terms.empty_pushes,
            terms.pixels,
            terms.even_pixels,
            terms.even_pushes,
            terms.decided_pixels};
}

DrawingEngine engine_with(PartSet parts, int driver) {
    if (driver == on_large_part) return {.parts = parts};
    return engine_on(parts, drivers[driver].kind, drivers[driver].bytes_per_pixel);
}

/// The terms of one call, those of the driver behind the engine's, and what is certain of its time.
std::vector<std::pair<int, double>> terms_of(const TimedService& service,
                                             PartSet parts,
                                             int driver,
                                             double& certain) {
    std::vector<std::pair<int, double>> terms;
    const DrawingEngine drawing = engine_with(parts, driver);
    const DrawTerms engine = draw_terms(service.work, drawing);
    for (int i = 0; i < draw_term_count; ++i) {
        const double times = engine[static_cast<std::size_t>(i)];
        if (times != 0.0) terms.emplace_back(i, times);
    }
    const DriverTerms of_driver = driver_terms(service.work, drawing);
    certain = driver == on_large_part ? 0.0 : certain_pixel(drivers[driver]) * of_driver.pixels;
    const auto all = fields(of_driver);
    // The engine's own weights hold what the first driver takes beside pixels.
    if (driver == 0 || driver == on_large_part) return terms;
    for (int i = 0; i < driver_fields; ++i) {
        const bool is_pixel = i >= pixel_field && i < decided_pixel_field;
        const bool wanted = !is_pixel || certain_pixel(drivers[driver]) == 0.0;
        const bool parallel = drivers[driver].kind == BusKind::parallel8;
        const bool is_even = i > pixel_field && i < decided_pixel_field;
        if (wanted && (!is_even || parallel) && all[static_cast<std::size_t>(i)] != 0.0) {
            terms.emplace_back(draw_term_count + driver * driver_fields + i,
                               all[static_cast<std::size_t>(i)]);
        }
    }
    return terms;
}

std::vector<double> fit(const std::vector<Job>& jobs, bool (*takes_part)(int subject)) {
    std::vector<bool> may_be_negative(draw_term_count + driver_count * driver_fields, false);
    for (int i = draw_term_count; i < static_cast<int>(may_be_negative.size()); ++i) {
        may_be_negative[static_cast<std::size_t>(i)] = true;
    }
    LeastSquares squares(may_be_negative);
    for (const Job& job : jobs) {
        if (!takes_part(job.subject) || job.driver == on_large_part) continue;
        for (const TimedUpdate& update : job.run.updates) {
            for (const TimedService& service : update.services) {
                double certain = 0.0;
                const auto terms = terms_of(service, job.run.parts, job.driver, certain);
                const double whole = service.cycles + negligible;
                squares.add(terms, service.cycles - certain, 1.0 / (whole * whole));
            }
        }
    }
    return squares.solve(ridge);
}

constexpr double window_bytes = 11.0, first_driver_byte = 18.0, parallel_byte = 5.0;
constexpr double window_cycles = window_bytes * first_driver_byte;

/// The larger part: its engine's time as a multiple, and its driver.
struct LargePart {
    double factor = 1.0;
    std::array<double, driver_fields> driver{};
};

LargePart fit_large_part(const std::vector<Job>& jobs,
                         const std::vector<double>& weights,
                         bool (*takes_part)(int subject)) {
    LeastSquares squares(std::vector<bool>(1 + driver_fields, true));
    for (const Job& job : jobs) {
        if (job.driver != on_large_part || !takes_part(job.subject)) continue;
        for (const TimedUpdate& update : job.run.updates) {
            for (const TimedService& service : update.services) {
                // Without pixels, and without the bytes of windows, which are the first driver's.
                double pixels = 0.0;
                double engine = 0.0;
                for (const auto& [term, times] :
                     terms_of(service, job.run.parts, on_large_part, pixels)) {
                    engine += times * weights[static_cast<std::size_t>(term)];
                }
                const DriverTerms of_driver =
                    driver_terms(service.work, engine_with(job.run.parts, on_large_part));
                std::vector<std::pair<int, double>> terms = {
                    {0, engine - of_driver.windows * window_cycles}};
                const auto all = fields(of_driver);
                for (int i = 0; i < driver_fields; ++i) {
                    const double times = all[static_cast<std::size_t>(i)];
                    if (times != 0.0) terms.emplace_back(1 + i, times);
                }
                const double whole = service.cycles + negligible;
                squares.add(terms, service.cycles, 1.0 / (whole * whole));
            }
        }
    }
    const std::vector<double> all = squares.solve(ridge);
    LargePart large;
    large.factor = all[0];
    std::copy(all.begin() + 1, all.end(), large.driver.begin());
    return large;
}

/// What a fit comes to.
struct Weights {
    std::vector<double> all;
    LargePart large;
};

Weights fit_all(const std::vector<Job>& jobs, bool (*takes_part)(int subject)) {
    Weights weights;
    weights.all = fit(jobs, takes_part);
    weights.large = fit_large_part(jobs, weights.all, takes_part);
    return weights;
}

double predicted(const TimedService& service, PartSet parts, int driver, const Weights& weights) {
    const bool large = driver == on_large_part;
    double cycles = 0.0;
    double engine = 0.0;
    for (const auto& [term, times] : terms_of(service, parts, driver, cycles)) {
        engine += times * weights.all[static_cast<std::size_t>(term)];
    }
    if (!large) return cycles + engine;
    const DriverTerms of_driver = driver_terms(service.work, engine_with(parts, driver));
    const auto all = fields(of_driver);
    cycles = weights.large.factor * (engine - of_driver.windows * window_cycles);
    for (std::size_t i = 0; i < all.size(); ++i) {
        cycles += all[i] * weights.large.driver[i];
    }
    return cycles;
}

/// Errors as parts of what they are errors of, sorted.
struct Errors {
    std::vector<double> updates, longest;
    [[nodiscard]] static double at(const std::vector<double>& sorted, double share) {
        return sorted.empty() ? 0.0
                              : sorted[static_cast<std::size_t>(
                                    share * static_cast<double>(sorted.size() - 1))];
    }
};

Errors judge(const std::vector<Job>& jobs,
             const Weights& weights,
             int driver,
             const std::vector<Subject>& subjects,
             bool (*counts)(int subject)) {
    Errors errors;
    const char* wanted = std::getenv("TELL");
    const double worth_telling = wanted == nullptr ? 1.0 : std::atof(wanted);
    for (const Job& job : jobs) {
        if (job.driver != driver || !counts(job.subject)) continue;
        for (const TimedUpdate& update : job.run.updates) {
            double measured = 0.0, sum = 0.0, longest = 0.0, longest_predicted = 0.0;
            for (const TimedService& service : update.services) {
                const double here = predicted(service, job.run.parts, driver, weights);
                measured += service.cycles;
                sum += here;
                longest = std::max(longest, service.cycles);
                longest_predicted = std::max(longest_predicted, here);
            }
            errors.updates.push_back(std::abs(sum - measured) / measured);
            errors.longest.push_back(std::abs(longest_predicted - longest) / longest);
            if (errors.updates.back() > worth_telling) {
                std::fprintf(stderr,
                             "%s, %s: %.0f cycles, predicted %.0f (%+.1f %%)\n",
                             subjects[static_cast<std::size_t>(job.subject)].layout.title.c_str(),
                             update.what.c_str(),
                             measured,
                             sum,
                             100.0 * (sum / measured - 1.0));
            }
        }
    }
    std::sort(errors.updates.begin(), errors.updates.end());
    std::sort(errors.longest.begin(), errors.longest.end());
    return errors;
}

int given = 0;  // layouts on the command line; they come first

bool all(int) {
    return true;
}
bool is_kept_out(int subject) {
    return subject >= given && (subject - given) % kept_out_every == 0;
}
bool is_not_kept_out(int subject) {
    return !is_kept_out(subject);
}
bool is_given(int subject) {
    return subject < given;
}
bool is_made_up(int subject) {
    return !is_given(subject);
}

void tell(const char* what, const TimedDriver& driver, const Errors& errors) {
    std::fprintf(
        stderr,
        "%s, %s with %d bytes a pixel: %zu updates: median %.2f %%, nine of ten %.2f %%, worst "
        "%.2f %%; longest slice: %.2f, %.2f, %.2f %%\n",
        what,
        driver.name,
        driver.bytes_per_pixel,
        errors.updates.size(),
        100.0 * Errors::at(errors.updates, 0.5),
        100.0 * Errors::at(errors.updates, 0.9),
        100.0 * Errors::at(errors.updates, 1.0),
        100.0 * Errors::at(errors.longest, 0.5),
        100.0 * Errors::at(errors.longest, 0.9),
        100.0 * Errors::at(errors.longest, 1.0));
}

double rounded(double weight) {
    return std::round(weight * 100.0) / 100.0;
}

void write_row(std::ostream& out,
               const TimedDriver& driver,
               bool whole_port,
               const std::array<double, driver_fields>& cycles,
               const Errors& errors) {
    out << "    {BusKind::" << driver.name << ", " << driver.bytes_per_pixel << ", "
        << (whole_port ? "true" : "false");
    for (const double field : cycles) {
        out << ", " << rounded(field);
    }
    out << ", " << errors.updates.size();
    for (const double share : {0.5, 0.9, 1.0}) {
        out << ", " << std::round(1e4 * Errors::at(errors.updates, share)) / 1e4;
    }
    out << "},\n";
}

void write(std::ostream& out, const Weights& weights, const std::vector<Errors>& errors) {
    out << R"(// Written by tests/firmware/measure_times.cpp from firmware run on a simulated chip; not edited by hand.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate::measured {

/// Cycles of the ATmega328P for one of draw_terms(), with the driver `spi_timed` of two bytes a pixel.
struct EngineTerm {
    int term;
    double cycles;
};
// clang-format off
inline constexpr EngineTerm engine_work[] = {
)";
    for (int i = 0; i < draw_term_count; ++i) {
        const double weight = rounded(weights.all[static_cast<std::size_t>(i)]);
        if (weight != 0.0) {
            out << "    {" << i << ", " << weight << "},  // " << name_of_term(i) << '\n';
        }
    }
    out << R"(};
// clang-format on

/// What a driver takes: for a pixel, and beside that more than `spi_timed` of two bytes.
struct DriverTime {
    BusKind kind;
    int bytes_per_pixel;
    bool whole_port;  ///< parallel8: the data lines on one port, as on the large part.
    double window, push, empty_push, pixel;
    double even_pixel, even_push;  ///< Beside that, where both bytes of a colour are equal.
    double decided_pixel;  ///< Beside that, of a glyph in `context` that it decides itself.
    int updates;  ///< Of layouts kept out of the fit. The errors are of these, as parts of the whole.
    double median_error, nine_of_ten_error, worst_error;
};
// clang-format off
inline constexpr DriverTime driver_time[] = {
)";
    for (int d = 0; d < driver_count; ++d) {
        std::array<double, driver_fields> cycles{};
        std::copy_n(weights.all.begin() + draw_term_count + d * driver_fields,
                    driver_fields,
                    cycles.begin());
        const double certain = certain_pixel(drivers[d]);
        if (certain != 0.0) cycles[pixel_field] = certain;
        write_row(out, drivers[d], false, cycles, errors[static_cast<std::size_t>(d)]);
    }
    // As sim/ledger/draw_time.cpp sums it up: all but the bytes goes with the factor.
    const LargePart& large = weights.large;
    std::array<double, driver_fields> cycles = large.driver;
    const double window_beside = cycles[0] - window_bytes * parallel_byte;
    cycles[0] = window_beside / large.factor + window_bytes * (parallel_byte - first_driver_byte);
    for (const int i : {1, 2, 5}) {
        cycles[static_cast<std::size_t>(i)] /= large.factor;
    }
    write_row(out, of_large_part, true, cycles, errors.back());
    out << "};\n// clang-format on\n\n/// What the engine's own work takes more on a part with "
           "more than 128 "
           "KiB of flash: calls are longer.\n"
           "inline constexpr const char* large_part = \"ATmega2560\";\n"
           "inline constexpr double large_part_factor = "
        << std::round(1e4 * large.factor) / 1e4 << ";\n\n}  // namespace dialplate::measured\n";
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) {
        std::cerr << "usage: measure_times TREE OUTPUT LAYOUT...\n";
        return 2;
    }
    const std::string tree = argv[1];
    std::vector<Subject> subjects;
    const auto take = [&](const Reading& reading, const std::string& name) {
        const Building building = reading.layout ? build_image(*reading.layout) : Building{};
        if (!building.image) {
            std::cerr << name << ": cannot be used\n";
            std::exit(1);
        }
        subjects.push_back({*reading.layout, *building.image});
    };
    for (int i = 3; i < argc; ++i) {
        take(load_layout(argv[i]), argv[i]);
    }
    given = static_cast<int>(subjects.size());
    for (std::uint32_t seed = 0; seed < made_up; ++seed) {
        const std::string name = "made up from " + std::to_string(seed);
        take(read_layout(timed_layout(seed), name, tree + "/layouts"), name);
    }

    std::vector<Job> jobs;
    for (int s = 0; s < static_cast<int>(subjects.size()); ++s) {
        for (int d = 0; d < driver_count; ++d) {
            const bool second = d == 1 && s % 2 == 0;
            if (d == 0 || second || s < given + for_other_drivers) jobs.push_back({s, d, {}});
        }
        if (s < given + for_other_drivers) jobs.push_back({s, on_large_part, {}});
    }
    std::atomic<std::size_t> next{0};
    const auto work = [&] {
        for (std::size_t i = 0; (i = next++) < jobs.size();) {
            Job& job = jobs[i];
            const Subject& subject = subjects[static_cast<std::size_t>(job.subject)];
            const bool large = job.driver == on_large_part;
            job.run = timed_run(subject.layout,
                                subject.built,
                                large ? of_large_part : drivers[job.driver],
                                rounds,
                                tree,
                                large ? large_mcu : "atmega328p");
        }
    };
    std::vector<std::thread> threads;
    for (unsigned t = 0; t < std::max(1U, std::thread::hardware_concurrency()); ++t) {
        threads.emplace_back(work);
    }
    for (std::thread& thread : threads) {
        thread.join();
    }
    std::size_t services = 0;
    for (const Job& job : jobs) {
        if (!job.run.trouble.empty()) {
            std::cerr << job.run.trouble << '\n';
            return 1;
        }
        for (const TimedUpdate& update : job.run.updates)
            services += update.services.size();
    }
    std::fprintf(stderr, "%zu runs, %zu services\n", jobs.size(), services);

    const Weights for_judging = fit_all(jobs, is_not_kept_out);
    const Weights without_given = fit_all(jobs, is_made_up);
    const Weights weights = fit_all(jobs, all);
    std::vector<Errors> errors;
    for (int d = 0; d <= driver_count; ++d) {
        const TimedDriver& driver = d == on_large_part ? of_large_part : drivers[d];
        errors.push_back(judge(jobs, for_judging, d, subjects, is_kept_out));
        tell("kept out", driver, errors.back());
        tell("examples, kept out", driver, judge(jobs, without_given, d, subjects, is_given));
        tell("fitted", driver, judge(jobs, weights, d, subjects, all));
    }
    std::ofstream out(argv[2]);
    write(out, weights, errors);
    return out.good() ? 0 : 1;
}

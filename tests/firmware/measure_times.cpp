// measure_times TREE OUTPUT LAYOUT...: runs the engine on the simulated ATmega328P with every driver, draws
// the same changes on the PC, and fits what the engine takes beside the bytes on the bus. Writes
// sim/ledger/measured_times.hpp. Any byte that differs ends it.
#include "sim/display/bus_time.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/draw_terms.hpp"
#include "sim/prototype/parts_used.hpp"
#include "sim/prototype/prototype.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"
#include "tests/firmware/least_squares.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <memory>
#include <random>
#include <string>
#include <vector>

using namespace dialplate;
namespace fs = std::filesystem;

namespace {

constexpr int rounds = 6;               // of random changes of every value, a layout and page
constexpr double worth_telling = 0.25;  // error of a prediction
constexpr CycleCount too_long = 200'000'000;

struct Driver {
    const char* name;
    const char* link;
    BusKind kind;
    double bus_mhz;
};
constexpr Driver drivers[] = {
    {"spi", "polled", BusKind::spi, 8.0},
    {"spi_timed", "timed", BusKind::spi_timed, 8.0},
    {"usart_spi", "usart", BusKind::usart_spi, 8.0},
    {"parallel8", "parallel", BusKind::parallel8, 8.0},
};

/// One update, drawn on both sides.
struct Drawn {
    std::string layout;
    std::string what;
    Update update;
    double cycles = 0.0;  ///< Beside the bytes on the bus.
    double all = 0.0;
};

struct Subject {
    Layout layout;
    BuiltImage built;
};

fs::path firmware_for(const Subject& subject, const Driver& driver, const fs::path& tree) {
    const fs::path folder =
        fs::temp_directory_path() / ("measure_times." + std::to_string(getpid()));
    fs::create_directories(folder);
    std::ofstream image(folder / "image.inc");
    for (const std::uint8_t byte : subject.built.bytes) {
        image << int{byte} << ",\n";
    }
    image.close();
    FirmwareSources what;
    what.sources = {tree / "tests/firmware/engine_time.cpp"};
    what.include_directories = {tree};
    what.definitions = {
        "PARTS=" + std::to_string(parts_used(subject.layout, subject.built).bits),
        "IMAGE=\"" + (folder / "image.inc").string() + "\"",
        "ARENA=" + std::to_string(subject.built.arena_values + subject.built.arena_shown + 1),
        "LINK=" + std::string{driver.link},
        "PANEL_BYTES=" + std::to_string(bytes_per_pixel(subject.layout.display, driver.kind))};
    what.output = folder / "engine_time.elf";
    const std::string complaint = build_firmware(find_toolchain().value(), what);
    if (!complaint.empty()) {
        std::cerr << complaint;
        std::exit(1);
    }
    return what.output;
}

/// The prototype and the board, told the same.
class Pair {
public:
    Pair(const Subject& subject, const Driver& driver, const fs::path& tree)
        : layout_(subject.layout), driver_(driver) {
        layout_.bus.kind = driver.kind;
        layout_.bus.clock = Hertz{driver.bus_mhz * 1e6};
        prototype_ = std::make_unique<Prototype>(layout_, subject.built);
        BoardOptions options;
        options.display.bus = driver.kind;
        board_ = std::make_unique<Board>(options);
        if (const auto wrong = board_->load(firmware_for(subject, driver, tree))) {
            std::cerr << *wrong << '\n';
            std::exit(1);
        }
        board_->run_until_mark(too_long);
        told_.assign(layout_.values.size(), 0);
        std::vector<Drawn> start;
        tell_values();
        draw(start, "start");
    }

    Prototype& prototype() { return *prototype_; }
    const Layout& layout() const { return layout_; }

    void show_page(int page) {
        prototype_->show_page(page);
        feed({2, low(page)});
    }
    void touch(int x, int y) {
        prototype_->touch(x, y);
        feed({3, low(x), low(x >> 8), low(y), low(y >> 8)});
    }
    void lift() {
        prototype_->lift();
        feed({4});
    }

    void draw(std::vector<Drawn>& drawn, const std::string& what) {
        const Update update = prototype_->settle();
        tell_values();
        const std::int64_t bytes_before = board_->bus_bytes();
        feed({5});
        const std::size_t marks = board_->marks().size();
        board_->feed(std::exchange(orders_, {}));
        board_->run_until_mark(too_long);
        board_->run_until_mark(too_long);
        if (board_->marks().size() != marks + 2) {
            std::cerr << "the board does not answer\n";
            std::exit(1);
        }
        const std::int64_t bytes = board_->bus_bytes() - bytes_before;
        if (bytes != update.sent.bytes) {
            std::cerr << layout_.title << ", " << driver_.name << ": " << bytes
                      << " bytes, expected " << update.sent.bytes << '\n';
            ++differences_;
            return;
        }
        if (bytes == 0) {
            return;
        }
        const double all =
            static_cast<double>(board_->marks().back().at - board_->marks()[marks].at);
        const Cycles bus = bus_cycles(
            Bytes{bytes}, driver_.kind, {.processor = Hertz{16e6}, .bus = layout_.bus.clock});
        drawn.push_back({layout_.title, what, update, all - static_cast<double>(bus.value), all});
    }
    int differences() const { return differences_; }

private:
    static std::uint8_t low(int number) { return static_cast<std::uint8_t>(number & 0xFF); }
    void feed(std::vector<std::uint8_t> bytes) {
        orders_.insert(orders_.end(), bytes.begin(), bytes.end());
    }
    void tell_values() {
        for (std::size_t v = 0; v < told_.size(); ++v) {
            const std::int32_t now = prototype_->get(static_cast<ValueId>(v));
            if (now != told_[v]) {
                told_[v] = now;
                feed({1,
                      low(static_cast<int>(v)),
                      low(now),
                      low(now >> 8),
                      low(now >> 16),
                      low(now >> 24)});
            }
        }
    }

    Layout layout_;
    Driver driver_;
    std::unique_ptr<Prototype> prototype_;
    std::unique_ptr<Board> board_;
    std::vector<std::uint8_t> orders_;
    std::vector<std::int32_t> told_;
    int differences_ = 0;
};

void play(Pair& pair, std::vector<Drawn>& drawn) {
    std::mt19937 random(16);
    const Layout& layout = pair.layout();
    for (int page = 0; page < static_cast<int>(layout.pages.size()); ++page) {
        pair.show_page(page);
        pair.draw(drawn, "page " + layout.pages[static_cast<std::size_t>(page)].name);
        for (int round = 0; round < rounds; ++round) {
            for (std::size_t v = 0; v < layout.values.size(); ++v) {
                const Value& value = layout.values[v];
                const std::int32_t now = pair.prototype().get(static_cast<ValueId>(v));
                // Small steps and great ones: one digit, and many.
                const std::int64_t span = std::int64_t{value.max} - value.min;
                const std::int64_t reach =
                    round % 2 == 0 ? std::max<std::int64_t>(1, span / 1'000'000) : span;
                std::uniform_int_distribution<std::int64_t> step(-reach, reach);
                pair.prototype().set(static_cast<ValueId>(v),
                                     static_cast<std::int32_t>(std::clamp<std::int64_t>(
                                         now + step(random), value.min, value.max)));
                pair.draw(drawn, value.name);
            }
        }
        for (const Item& item : layout.pages[static_cast<std::size_t>(page)].items) {
            if (item.kind == ItemKind::key) {
                pair.touch(item.box.x + item.box.width / 2, item.box.y + item.box.height / 2);
                pair.draw(drawn, item.name);
                const bool at_left = item.box.x > 0;
                pair.touch(at_left ? 0 : layout.glass_width() - 1,
                           at_left ? 0 : layout.glass_height() - 1);
                pair.lift();
                pair.draw(drawn, item.name);
            }
        }
    }
}

}  // namespace

int main(int argc, char** argv) {
    if (argc < 4) {
        std::cerr << "usage: measure_times TREE OUTPUT LAYOUT...\n";
        return 2;
    }
    const fs::path tree = argv[1];
    std::vector<Subject> subjects;
    for (int i = 3; i < argc; ++i) {
        const Reading reading = load_layout(argv[i]);
        const Building building = reading.layout ? build_image(*reading.layout) : Building{};
        if (!building.image) {
            std::cerr << argv[i] << ": cannot be used\n";
            return 1;
        }
        subjects.push_back({*reading.layout, *building.image});
    }
    std::ofstream out(argv[2]);
    out << "// Written by tests/firmware/measure_times.cpp from firmware run on a simulated chip; "
           "not edited by "
           "hand.\n#pragma once\n\n#include \"sim/layout/layout.hpp\"\n\nnamespace "
           "dialplate::measured {\n\n"
           "/// What an update takes beside its bytes on the bus: cycles for each of "
           "draw_terms().\n"
           "struct Drawing {\n    BusKind kind;\n    double terms["
        << draw_term_count
        << "];\n    int updates;        ///< Run and timed.\n"
           "    double median_error;  ///< Of the whole time of an update, as a part of it.\n"
           "    double worst_error;\n};\n// clang-format off\ninline constexpr Drawing drawing[] = "
           "{\n";
    int differences = 0;
    for (const Driver& driver : drivers) {
        std::vector<Drawn> drawn;
        for (const Subject& subject : subjects) {
            Pair pair(subject, driver, tree);
            play(pair, drawn);
            differences += pair.differences();
        }
        // Each update counts alike, so that the many small ones are met as well as the few whole pages.
        std::vector<Equation> equations;
        for (const Drawn& one : drawn) {
            Equation equation;
            for (const double term : draw_terms(one.update)) {
                equation.terms.push_back(term / one.all);
            }
            equation.value = one.cycles / one.all;
            equations.push_back(std::move(equation));
        }
        const std::vector<double> weights = least_squares(equations, 1e-9);
        std::vector<double> errors;
        for (const Drawn& one : drawn) {
            double predicted = one.all - one.cycles;
            const auto terms = draw_terms(one.update);
            for (std::size_t i = 0; i < terms.size(); ++i) {
                predicted += terms[i] * weights[i];
            }
            errors.push_back(std::abs(predicted - one.all) / one.all);
            if (errors.back() > worth_telling || std::getenv("TELL") != nullptr) {
                std::cerr << driver.name << ", " << one.layout << ", " << one.what << ": "
                          << one.all << " cycles, predicted " << predicted << ", "
                          << one.update.sent.pixels << " pixels, " << one.update.sent.windows
                          << " windows, " << one.update.work.reads << " reads\n";
            }
        }
        std::sort(errors.begin(), errors.end());
        out << "    {BusKind::" << driver.name << ", {";
        for (std::size_t i = 0; i < weights.size(); ++i) {
            out << (i == 0 ? "" : ", ") << std::round(weights[i] * 100.0) / 100.0;
        }
        out << "}, " << drawn.size() << ", " << errors[errors.size() / 2] << ", " << errors.back()
            << "},\n";
        std::cerr << driver.name << ": " << drawn.size() << " updates, median error "
                  << 100 * errors[errors.size() / 2] << " %, nine of ten "
                  << 100 * errors[errors.size() * 9 / 10] << " %, worst " << 100 * errors.back()
                  << " %\n";
    }
    out << "};\n// clang-format on\n\n}  // namespace dialplate::measured\n";
    return differences == 0 && out.good() ? 0 : 1;
}

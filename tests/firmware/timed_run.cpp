#include "tests/firmware/timed_run.hpp"

#include "sim/prototype/prototype.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"

#include <algorithm>
#include <atomic>
#include <fstream>
#include <memory>
#include <random>
#include <stdexcept>
#include <unistd.h>
#include <utility>

namespace dialplate {
namespace {

namespace fs = std::filesystem;

constexpr CycleCount too_long = 400'000'000;
constexpr std::uint8_t idle =
    4;  // mark of engine_time.cpp behind the services, which have two each

fs::path firmware_for(const Layout& layout,
                      const BuiltImage& built,
                      const TimedDriver& driver,
                      const fs::path& tree,
                      const std::string& mcu) {
    static std::atomic<int> number{0};
    const fs::path folder = fs::temp_directory_path() / ("timed_run." + std::to_string(getpid()) +
                                                         '.' + std::to_string(number++));
    fs::create_directories(folder);
    std::ofstream image(folder / "image.inc");
    for (const std::uint8_t byte : built.bytes) {
        image << int{byte} << ",\n";
    }
    image.close();
    FirmwareSources what;
    what.mcu = mcu;
    what.sources = {tree / "tests/firmware/engine_time.cpp"};
    what.include_directories = {tree};
    what.definitions = {"PARTS=" + std::to_string(parts_used(layout, built).bits),
                        "IMAGE=\"" + (folder / "image.inc").string() + "\"",
                        "CONTEXT_COLUMNS=" + std::to_string(built.context_columns()),
                        "ARENA=" + std::to_string(built.arena_values + built.arena_shown + 1),
                        "LINK=" + std::string{driver.link},
                        "PANEL_BYTES=" + std::to_string(driver.bytes_per_pixel)};
    what.output = folder / "engine_time.elf";
    const std::string complaint = build_firmware(find_toolchain().value(), what);
    if (!complaint.empty()) throw std::runtime_error(complaint);
    return what.output;
}

/// The lines that the links of bench/display.hpp use.
DisplayWiring wiring_of(const TimedDriver& driver) {
    DisplayWiring wiring;
    wiring.bus = driver.kind;
    const std::string link = driver.link;
    if (link == "split") {
        wiring.write = {'C', 1};
        wiring.data_or_command = {'C', 2};
        wiring.select = PinPlace{'C', 3};
        wiring.data[0] = {'B', 0};
        wiring.data[1] = {'B', 1};
    } else if (link == "whole_port") {
        wiring.write = {'C', 0};
        wiring.data_or_command = {'C', 2};
        wiring.select = PinPlace{'C', 3};
        for (PinPlace& line : wiring.data) {
            line.port = 'A';
        }
    }
    return wiring;
}

/// The prototype and the board, told the same.
class Pair {
public:
    Pair(const Layout& layout,
         const BuiltImage& built,
         const TimedDriver& driver,
         const fs::path& tree,
         const std::string& mcu)
        : layout_(layout) {
        layout_.bus.kind = driver.kind;
        layout_.bus.clock = Hertz{8e6};
        layout_.display.bytes_per_pixel = driver.bytes_per_pixel;
        prototype_ = std::make_unique<Prototype>(layout_, built);
        prototype_->watch_services([this](const EngineWork& work) { services_.push_back({work}); });
        BoardOptions options;
        options.mcu = mcu;
        options.display = wiring_of(driver);
        board_ = std::make_unique<Board>(options);
        const fs::path elf = firmware_for(layout_, built, driver, tree, mcu);
        const auto wrong = board_->load(elf);
        fs::remove_all(elf.parent_path());
        if (wrong) throw std::runtime_error(*wrong);
        board_->run_until_mark(too_long);
        told_.assign(layout_.values.size(), 0);
        tell_values();
        draw("start");
        run_.updates.clear();
        run_.parts = parts_used(layout_, built);
    }

    Prototype& prototype() { return *prototype_; }
    const Layout& layout() const { return layout_; }
    TimedRun take() { return std::move(run_); }

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

    void draw(const std::string& what) {
        services_.clear();
        const Update update = prototype_->settle();
        tell_values();
        const std::int64_t bytes_before = board_->bus_bytes();
        feed({5});
        const std::size_t first = board_->marks().size();
        board_->feed(std::exchange(orders_, {}));
        do {
            if (board_->run_until_mark(too_long) != Stop::mark) {
                throw std::runtime_error(layout_.title + ", " + what +
                                         ": the board does not answer; " +
                                         std::to_string(board_->size().flash) + " bytes of flash");
            }
        } while (board_->marks().back().value != idle);
        const std::vector<Mark>& marks = board_->marks();
        if (board_->bus_bytes() - bytes_before != update.sent.bytes ||
            marks.size() != first + 2 * services_.size() + 1) {
            throw std::runtime_error(layout_.title + ", " + what + ": " +
                                     std::to_string(board_->bus_bytes() - bytes_before) +
                                     " bytes in " + std::to_string((marks.size() - first) / 2) +
                                     " services, expected " + std::to_string(update.sent.bytes) +
                                     " in " + std::to_string(services_.size()));
        }
        for (std::size_t i = 0; i < services_.size(); ++i) {
            services_[i].cycles =
                static_cast<double>(marks[first + 2 * i + 1].at - marks[first + 2 * i].at);
        }
        if (update.sent.bytes != 0) {
            run_.updates.push_back({what, std::exchange(services_, {})});
        }
    }

private:
    static std::uint8_t low(int number) { return static_cast<std::uint8_t>(number & 0xFF); }
    void feed(std::initializer_list<std::uint8_t> bytes) {
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
    TimedRun run_;
    std::unique_ptr<Prototype> prototype_;
    std::unique_ptr<Board> board_;
    std::vector<TimedService> services_;
    std::vector<std::uint8_t> orders_;
    std::vector<std::int32_t> told_;
};

/// Changes every value by a little and by a lot in turns: one digit, and many.
void change_values(Pair& pair, int rounds, std::mt19937& random) {
    const std::vector<Value>& values = pair.layout().values;
    for (int round = 0; round < rounds; ++round) {
        for (std::size_t v = 0; v < values.size(); ++v) {
            const Value& value = values[v];
            const std::int64_t now = pair.prototype().get(static_cast<ValueId>(v));
            const std::int64_t span = std::int64_t{value.max} - value.min;
            const std::int64_t reach =
                round % 2 == 0 ? std::max<std::int64_t>(1, span / 1'000'000) : span;
            const std::int64_t step =
                static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(2 * reach + 1)) -
                reach;
            pair.prototype().set(static_cast<ValueId>(v),
                                 static_cast<std::int32_t>(
                                     std::clamp<std::int64_t>(now + step, value.min, value.max)));
            pair.draw(value.name);
        }
    }
}

void press_keys(Pair& pair, const Page& page) {
    for (const Item& item : page.items) {
        if (item.kind != ItemKind::key) continue;
        pair.touch(item.box.x + item.box.width / 2, item.box.y + item.box.height / 2);
        pair.draw("press of " + item.name);
        const bool at_left = item.box.x > 0;
        pair.touch(at_left ? 0 : pair.layout().glass_width() - 1,
                   at_left ? 0 : pair.layout().glass_height() - 1);
        pair.lift();
        pair.draw("end of " + item.name);
    }
}

}  // namespace

TimedRun timed_run(const Layout& layout,
                   const BuiltImage& built,
                   const TimedDriver& driver,
                   int rounds,
                   const fs::path& tree,
                   const std::string& mcu) {
    try {
        Pair pair(layout, built, driver, tree, mcu);
        std::mt19937 random(16);
        for (std::size_t p = 0; p < layout.pages.size(); ++p) {
            pair.show_page(static_cast<int>(p));
            pair.draw("page " + layout.pages[p].name);
            change_values(pair, rounds, random);
            press_keys(pair, layout.pages[p]);
        }
        return pair.take();
    } catch (const std::exception& error) {
        TimedRun failed;
        failed.trouble = error.what();
        return failed;
    }
}

TimedRun timed_numbers(const Layout& layout,
                       const BuiltImage& built,
                       const TimedDriver& driver,
                       ValueId value,
                       const std::vector<std::int32_t>& numbers,
                       const std::filesystem::path& tree) {
    try {
        Pair pair(layout, built, driver, tree, "atmega328p");
        for (const std::int32_t number : numbers) {
            pair.prototype().set(value, number);
            pair.draw(std::to_string(number));
        }
        return pair.take();
    } catch (const std::exception& error) {
        TimedRun failed;
        failed.trouble = error.what();
        return failed;
    }
}

}  // namespace dialplate

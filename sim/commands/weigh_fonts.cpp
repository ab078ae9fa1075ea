#include "sim/commands/weigh_fonts.hpp"

#include "fonts/font_file.hpp"
#include "fonts/measure.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <algorithm>
#include <atomic>
#include <filesystem>
#include <mutex>
#include <thread>

namespace dialplate {
namespace {

constexpr int most_enlarged = 4;

std::string where_is(const std::string& font) {
    std::error_code trouble;
    return std::filesystem::exists(font, trouble) ? font : find_file(".", font);
}

/// How often a font with one fixed size has to be enlarged for another; 0: that size cannot be had.
int enlargement(const std::optional<int>& fixed, int size) {
    if (!fixed) return 1;
    const int times = size / *fixed;
    return size % *fixed == 0 && times <= most_enlarged ? times : 0;
}

/// One number, digit by digit, as a layout: what the time of a digit is taken from.
Layout one_digit(const Display& display) {
    static const std::string document = R"({
        "title": "One digit", "display": "2.8in-ILI9341",
        "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi_timed", "clock_mhz": 8},
        "paints": {"ground": "#000000", "ink": "#FFFFFF"},
        "faces": {"face": {"file": "figures24.bdf", "size": 24}},
        "values": {"digit": {"type": "number", "min": 0, "max": 9, "role": "frequency"}},
        "pages": [{"name": "main", "ground": "ground", "items": [
            {"kind": "readout", "at": [0, 0], "size": [20, 20], "value": "digit", "face": "face",
             "groups": [1], "ink": "ink", "align": "left"}]}]
    })";
    Reading reading = read_layout(document, "one digit", ".");
    Layout layout = reading.layout.value_or(Layout{});
    layout.display = display;
    return layout;
}

/// Only what has all ten digits, and no more rows and columns than the display, has a time.
std::optional<Milliseconds> time_of_digit(const Layout& digit,
                                          const WeighedFace& weighed,
                                          const std::string& path,
                                          PackingWish packing) {
    int digits = 0, columns = 0;
    for (const Glyph& glyph : weighed.face.glyphs) {
        if (glyph.code < U'0' || glyph.code > U'9') continue;
        ++digits;
        columns = std::max(columns, glyph.cell.width * weighed.enlarged);
    }
    if (digits != 10 || columns > digit.glass_width() ||
        weighed.face.height * weighed.enlarged > digit.glass_height())
        return std::nullopt;
    Layout layout = digit;
    layout.faces.front().file = std::filesystem::absolute(path).string();
    layout.faces.front().size = weighed.size / weighed.enlarged;
    layout.faces.front().scale = weighed.enlarged;
    layout.faces.front().packing = packing;
    layout.faces.front().smooth = weighed.face.smooth;
    layout.pages.front().items.front().box = {0, 0, layout.glass_width(), layout.glass_height()};
    const Building building = build_image(layout);
    if (!building.image) return std::nullopt;
    const Ledger ledger = account(layout, *building.image);
    const EventTime* tuning = ledger.slowest_tuning();
    return tuning == nullptr ? std::nullopt : std::optional(tuning->time);
}

/// What was asked for, one by one.
struct Task {
    std::string font, path;
    int size = 0, enlarged = 1;
    std::size_t set = 0;
    bool smooth = false;
};

std::vector<Task> tasks_for(const WeighWish& wish, std::vector<std::string>& mistakes) {
    std::vector<Task> tasks;
    for (const std::string& font : wish.fonts) {
        const std::string path = where_is(font);
        if (path.empty()) {
            mistakes.push_back("there is no font file \"" + font + "\" here or in fonts/");
            continue;
        }
        const std::optional<int> fixed = fonts::read_font_file(path).traits.pixel_size;
        const std::size_t before = tasks.size();
        for (const int size : wish.sizes) {
            const int enlarged = enlargement(fixed, size);
            for (std::size_t set = 0; enlarged != 0 && set < wish.sets.size(); ++set) {
                tasks.push_back({font, path, size, enlarged, set});
                if (wish.smooth && !fixed) tasks.push_back({font, path, size, enlarged, set, true});
            }
        }
        if (tasks.size() == before && fixed)
            mistakes.push_back("font \"" + font + "\" is drawn for " + std::to_string(*fixed) +
                               " px; enlarged it can be had in 2, 3 and 4 times that");
    }
    return tasks;
}

struct Done {
    std::optional<WeighedFace> face;
    std::string mistake;
};

Done weigh(const Task& task, const WeighWish& wish, const Layout& digit) {
    const auto drawn = [&](bool smooth) {
        return rasterise({.file = task.path,
                          .size = task.size / task.enlarged,
                          .characters = wish.sets[task.set],
                          .even_digits = true,
                          .smooth = smooth});
    };
    FaceResult result = drawn(task.smooth);
    if (!result.face)
        return {
            std::nullopt,
            "font \"" + task.font + "\" at " + std::to_string(task.size) + " px: " + result.error};
    WeighedFace weighed;
    weighed.file = task.font;
    weighed.size = task.size;
    weighed.enlarged = task.enlarged;
    weighed.set = task.set;
    weighed.face = std::move(*result.face);
    weighed.missing = std::move(result.missing);
    weighed.cropped = cropped_bytes(weighed.face);
    if (const FaceResult sharp = drawn(false); task.smooth && sharp.face)
        weighed.cropped = cropped_bytes(*sharp.face);
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : weighed.face.glyphs)
        cells.push_back(&glyph.cell);
    const ContextTable table = train_contexts(cells);
    RasterFace ordered = weighed.face;
    order_for_contexts(ordered, true, table);
    const auto bytes = [&](Packing packing) -> std::size_t& {
        return weighed.packings[static_cast<std::size_t>(packing)].bytes;
    };
    bytes(Packing::plain) = pack(weighed.face, Packing::plain, task.enlarged).bytes.size();
    bytes(Packing::runs) = pack(weighed.face, Packing::runs, task.enlarged).bytes.size();
    bytes(Packing::context) = pack_context(ordered, table, task.enlarged).bytes.size();
    constexpr PackingWish wishes[] = {PackingWish::plain, PackingWish::runs, PackingWish::context};
    for (std::size_t i = 0; i < weighed.packings.size(); ++i) {
        if (weighed.packings[i].bytes != 0)
            weighed.packings[i].digit = time_of_digit(digit, weighed, task.path, wishes[i]);
    }
    const Millimetres pitch{wish.display.active_height.value / wish.display.height};
    if (const std::optional<int> rows = capital_height(weighed.face); rows && *rows > 0)
        weighed.angle =
            visual_angle({.height = pitch * (*rows * task.enlarged), .distance = wish.distance});
    return {std::move(weighed), {}};
}

}  // namespace

std::size_t WeighedFace::smallest() const {
    std::size_t least = 0;
    for (const PackedWeight& packed : packings)
        if (packed.bytes != 0 && (least == 0 || packed.bytes < least)) least = packed.bytes;
    return least;
}

Weighing weigh_fonts(const WeighWish& wish) {
    Weighing weighing;
    const std::vector<Task> tasks = tasks_for(wish, weighing.mistakes);
    const Layout digit = one_digit(wish.display);
    std::vector<Done> done(tasks.size());
    std::atomic<std::size_t> next{0};
    std::size_t ready = 0;
    std::mutex telling;
    const auto share = [&] {
        for (std::size_t i = next++; i < tasks.size(); i = next++) {
            done[i] = weigh(tasks[i], wish, digit);
            const std::lock_guard<std::mutex> alone(telling);
            ++ready;
            if (wish.progress) wish.progress(ready, tasks.size());
        }
    };
    const std::size_t cores =
        wish.threads != 0 ? wish.threads : std::max(1U, std::thread::hardware_concurrency());
    std::vector<std::thread> others;
    for (std::size_t i = 1; i < std::min(cores, tasks.size()); ++i)
        others.emplace_back(share);
    share();
    for (std::thread& other : others)
        other.join();
    for (Done& one : done) {
        if (one.face)
            weighing.faces.push_back(std::move(*one.face));
        else
            weighing.mistakes.push_back(one.mistake);
    }
    return weighing;
}

}  // namespace dialplate

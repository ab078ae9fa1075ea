#include "sim/desk/scene.hpp"

#include "sim/desk/resample.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <iterator>
#include <utility>

namespace dialplate {
namespace {

/// The smallest box around both; an empty one counts for nothing.
Box around(const Box& a, const Box& b) {
    if (a.width == 0) return b;
    if (b.width == 0) return a;
    const int x = std::min(a.x, b.x);
    const int y = std::min(a.y, b.y);
    return {x, y, std::max(a.right(), b.right()) - x, std::max(a.bottom(), b.bottom()) - y};
}

std::string size_words(const char* format, double width, double height) {
    char words[64];
    std::snprintf(words, sizeof words, format, width, height);
    return words;
}

/// Short enough for two lines of the smallest strip.
std::string hint_at_true_size(const MeasuredScreen& screen) {
    if (screen.known == MeasuredScreen::Known::measured)
        return "Pixels are resampled; + shows them one by one.";
    const std::string by =
        screen.known == MeasuredScreen::Known::told ? "By the system's" : "By a guess of";
    return by + " " + std::to_string(std::lround(25.4 * screen.pixels_per_mm)) +
           " dots an inch; Shift T measures them.";
}

/// What can be done now, in a line.
std::string hint_of(const Bench& bench) {
    if (bench.trial && bench.trial->task() != nullptr) return bench.trial->task()->words;
    if (bench.plan.zoom == 0) return hint_at_true_size(bench.screen);
    switch (bench.mode) {
        case Mode::operate:
            return "The mouse is a finger. Wheel, arrow keys and the knob tune.";
        case Mode::arrange:
            return bench.session.chosen().empty()
                       ? "Click an item, or drag around several. N takes the next one."
                       : "Drag to move, grips to size, arrow keys by one pixel. Alt: nothing "
                         "catches.";
        case Mode::look:
            break;
    }
    return "Read it as from the operating position.";
}

FlashShare share_of(const FlashAccount& flash) {
    return {.capacity = flash.capacity.value,
            .taken = flash.boot.value + flash.taken.value,
            .display = flash.total.value,
            .left = flash.left.value};
}

}  // namespace

std::string Scene::load_faces() {
    const auto load = [](Typeface& face, const char* name, int size) {
        const std::string file = find_file(".", name);
        return file.empty() ? "the face " + std::string{name} + " is missing"
                            : face.load(file, size);
    };
    std::string reason = load(faces_.small, "legend9.bdf", 9);
    if (reason.empty()) reason = load(faces_.words, "legend13.bdf", 13);
    FaceRequest request{
        .file = find_file(".", "legend9.bdf"), .size = 9, .characters = {}, .even_digits = false};
    for (char32_t code = U' '; code <= U'~'; ++code)
        request.characters += code;
    if (FaceResult labels = rasterise(request); labels.face) labels_ = std::move(*labels.face);
    return reason.empty() ? load(faces_.large, "legend14.bdf", 14) : reason;
}

std::string Scene::arrange(const Zoom& zoom) {
    const WindowSize size = pane_.size();
    const SideWish side{bench_.habits.side_open, bench_.drawer};
    const bool empty = piece_.prototype() == nullptr;
    Plan& plan = bench_.plan;
    building_.clear();
    plan = empty ? plan_empty_window(size, side) : plan_window(piece_.layout(), size, zoom, side);
    for (Typeface* face : {&faces_.small, &faces_.words, &faces_.large})
        face->enlarge(plan.letter);
    ground_ = Canvas(size.width, size.height);
    picture_ = Canvas(size.width, size.height);
    shown_ = Canvas(size.width, size.height);
    title_ = empty ? "" : piece_.layout().title;
    if (empty)
        draw_plate(ground_, plan);
    else
        draw_panel(ground_, plan, faces_, title_);
    all_old_ = true;
    return side_.hold(shown_, faces_, plan.letter);
}

std::string Scene::renew(const Zoom& zoom) {
    if (piece_.prototype() == nullptr) return arrange(zoom);
    const Layout& layout = piece_.layout();
    if (layout.title != title_ ||
        plan_window(layout, pane_.size(), zoom, {bench_.habits.side_open, bench_.drawer}) !=
            bench_.plan)
        return arrange(zoom);
    glass_old_ = {0, 0, layout.glass_width(), layout.glass_height()};
    strip_old_ = true;
    return {};
}

void Scene::sent(const Update& update) {
    const std::deque<SentUpdate>& updates = bench_.journal.updates();
    if (bench_.habits.bus_speed && update.sent.pixels > 0 && !updates.empty()) {
        // Whatever is still underway arrives at once: the receiver, too, does one thing after another.
        for (const Underway& underway : std::exchange(building_, {}))
            for (const SentWindow& window : underway.windows)
                glass_old_ = around(glass_old_, window.box);
        building_.push_back({update.windows, updates.back().time.time.value, bench_.now_ms, 0});
        return;
    }
    for (const SentWindow& window : update.windows)
        glass_old_ = around(glass_old_, window.box);
}

CaptionWords Scene::caption() const {
    const Layout& layout = piece_.layout();
    const int page = piece_.prototype()->page();
    const int width = layout.glass_width(), height = layout.glass_height();
    std::string shown = layout.pages[static_cast<std::size_t>(page)].name;
    if (layout.pages.size() > 1)
        shown += "  " + std::to_string(page + 1) + " of " + std::to_string(layout.pages.size());
    const std::string pixels = size_words("%.0f x %.0f px", width, height);
    const std::string millimetres = size_words(
        "%.1f x %.1f mm", width * layout.pitch_x().value, height * layout.pitch_y().value);
    // What there is no room for is left out as a whole.
    const int room =
        bench_.plan.caption.width - faces_.small.width(shown, 1) - 20 * bench_.plan.letter;
    const std::string ways[] = {layout.display.name + "   " + pixels + "   " + millimetres,
                                layout.display.name + "   " + millimetres,
                                millimetres,
                                ""};
    const std::string& words = *std::find_if(std::begin(ways), std::end(ways) - 1, [&](auto& way) {
        return faces_.small.width(way) <= room;
    });
    return {words, std::move(shown)};
}

std::string Scene::step() const {
    const Layout& layout = piece_.layout();
    for (std::size_t i = 0; i < layout.values.size(); ++i) {
        const Value& value = layout.values[i];
        if (value.role != Role::step) continue;
        const std::int32_t now = piece_.prototype()->get(static_cast<ValueId>(i));
        if (value.type == ValueType::choice)
            return value.choices[static_cast<std::size_t>(now)].text + " a click";
        return std::to_string(now) + " " + value.unit + " a click";
    }
    return {};
}

void Scene::draw_lonely_mistakes() {
    const Area& panel = bench_.plan.panel;
    const int unit = bench_.plan.letter;
    const int left = panel.x + 40 * unit, room = panel.width - 80 * unit;
    const std::vector<Finding>& mistakes = piece_.mistakes();
    const std::string file = std::filesystem::path{piece_.file()}.filename().string();
    const bool missing =
        !piece_.can_be_read() && mistakes.size() == 1 && mistakes[0].rule == "missing-file";
    const auto write =
        [&](const Typeface& face, int x, int& y, const std::string& words, Colour ink) {
            for (const std::string& line : face.lines(words, left + room - x)) {
                face.draw(picture_, x, y, line, {.ink = ink});
                y += 16 * unit;
            }
        };
    int y = panel.y + 40 * unit;
    write(faces_.large,
          left,
          y,
          missing ? "There is no file " + file + "."
                  : "Nothing to show yet: " + file +
                        (mistakes.size() == 1
                             ? " has a mistake."
                             : " has " + std::to_string(mistakes.size()) + " mistakes."),
          tint::engraved);
    y += 6 * unit;
    write(faces_.words,
          left,
          y,
          "A save shows at once. Another layout can be dropped on this window.",
          tint::quiet);
    if (missing) return;
    y += 12 * unit;
    // As many as there is room for, the rest in a number.
    for (std::size_t i = 0; i < mistakes.size(); ++i) {
        const Finding& mistake = mistakes[i];
        const int inset = left + 12 * unit;
        const std::string words = mistake.message + " [" + mistake.rule + "]";
        const int lines = static_cast<int>(faces_.words.lines(words, left + room - inset).size());
        if (y + (16 * lines + 34) * unit > panel.bottom()) {
            const std::string more = "and " + std::to_string(mistakes.size() - i) + " more";
            faces_.words.draw(picture_, inset, y, more, {.ink = tint::quiet});
            break;
        }
        picture_.fill({left, y, 3 * unit, (16 * lines + 13) * unit}, colour_of(mistake.severity));
        const std::string place = "line " + std::to_string(mistake.place.line) + ", column " +
                                  std::to_string(mistake.place.column);
        faces_.small.draw(picture_, inset, y, place, {.ink = tint::quiet});
        y += 14 * unit;
        write(faces_.words, inset, y, words, tint::engraved);
        y += 10 * unit;
    }
}

void Scene::refresh_strip() {
    Status status;
    status.file = piece_.file();
    status.mistakes = piece_.mistakes();
    status.shown_is_old = piece_.prototype() != nullptr;
    if (piece_.prototype() != nullptr)
        status.zoom = bench_.plan.zoom > 0 ? "x" + std::to_string(bench_.plan.zoom)
                      : bench_.screen.known == MeasuredScreen::Known::measured ? "true size"
                                                                               : "about true size";
    if (piece_.ledger()) status.flash = share_of(piece_.ledger()->flash);
    status.findings = piece_.findings();
    // The worst is written out first.
    if (status.findings)
        std::stable_sort(
            status.findings->begin(),
            status.findings->end(),
            [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    if (const Trial* trial = bench_.trial.get(); trial != nullptr && trial->task() != nullptr)
        status.head = "TRIAL, " + std::to_string(trial->outcomes().size() + 1) + " OF " +
                      std::to_string(trial->tasks()) + "   F5 LEAVES IT";
    if (!bench_.plan.side.empty() || !status.head.empty()) status.hint = hint_drawn_;
    status.chosen = static_cast<int>(bench_.finding.value_or(0));
    draw_strip(picture_, bench_.plan, faces_, status);
    parts_.push_back(bench_.plan.strip);
}

bool Scene::build_up() {
    if (building_.empty()) return false;
    Underway& underway = building_.front();
    std::int64_t total = 0, before = 0;
    for (const SentWindow& window : underway.windows)
        total += window.pixels;
    const double part =
        underway.milliseconds <= 0.0
            ? 1.0
            : static_cast<double>(bench_.now_ms - underway.began) / underway.milliseconds;
    const auto due = static_cast<std::int64_t>(static_cast<double>(total) * std::min(part, 1.0));
    const std::vector<std::uint16_t> pixels = piece_.prototype()->glass();
    for (std::size_t i = 0; i < underway.windows.size(); ++i) {
        const SentWindow& window = underway.windows[i];
        const std::int64_t here = std::clamp(due - before, std::int64_t{0}, window.pixels);
        before += window.pixels;
        if (i < underway.done || window.box.width <= 0) continue;
        // Row by row, as windows are filled.
        Box arrived = window.box;
        arrived.height = static_cast<int>(here / window.box.width);
        if (arrived.height <= 0) break;
        parts_.push_back(
            draw_glass(picture_, bench_.plan, pixels, piece_.layout().glass_width(), arrived));
        if (here == window.pixels) underway.done = i + 1;
    }
    if (part >= 1.0) building_.clear();
    return !building_.empty();
}

void Scene::draw_looked_at() {
    const Layout& layout = piece_.layout();
    const std::vector<std::uint16_t> pixels = piece_.prototype()->glass();
    const Plan& plan = bench_.plan;
    // At true size the aids work on the next greater whole zoom, or on the pixels themselves.
    const int zoom = plan.zoom > 0 ? plan.zoom : static_cast<int>(std::ceil(plan.scale_x - 1e-9));
    const Rgb888 seen =
        looked_at({layout, piece_.prototype()->page(), pixels}, bench_.habits.aids, zoom, labels_);
    // What the panel hides can only be shown through it.
    const Area room = bench_.habits.aids.panel ? plan.glass : common_part(plan.glass, plan.opening);
    const Area area = common_part(room, picture_.all());
    if (plan.zoom == 0)
        draw_resampled(picture_, plan.glass, seen, area);
    else
        for (int y = area.y; y < area.bottom(); ++y)
            for (int x = area.x; x < area.right(); ++x)
                picture_.set(x, y, seen.at(x - plan.glass.x, y - plan.glass.y));
    parts_.push_back(area);
}

void Scene::refresh_glass() {
    const Layout& layout = piece_.layout();
    parts_.push_back(draw_glass(
        picture_, bench_.plan, piece_.prototype()->glass(), layout.glass_width(), glass_old_));
    glass_old_ = {};
}

void Scene::draw_bench(double turned) {
    const bool judged = piece_.judged() != judged_drawn_;
    const bool all = all_old_;
    if (all) picture_.restore(ground_, picture_.all());

    if (piece_.prototype() != nullptr) {
        if (all) glass_old_ = {0, 0, piece_.layout().glass_width(), piece_.layout().glass_height()};
        std::optional<Aids> aids;
        if (bench_.mode == Mode::look && bench_.habits.aids.any()) aids = bench_.habits.aids;
        if (aids != aids_) {
            // The trim may have been drawn over.
            picture_.restore(ground_, bench_.plan.glass);
            parts_.push_back(common_part(bench_.plan.glass, picture_.all()));
            glass_old_ = {0, 0, piece_.layout().glass_width(), piece_.layout().glass_height()};
            aids_ = aids;
        }
        if (aids) {
            building_.clear();
            if (glass_old_.width > 0) draw_looked_at();
            glass_old_ = {};
        } else {
            if (glass_old_.width > 0) refresh_glass();
            build_up();
        }
        if (all || turned != turned_drawn_) {
            picture_.restore(ground_, bench_.plan.knob_area());
            draw_knob(picture_, bench_.plan, turned);
            parts_.push_back(bench_.plan.knob_area());
        }
        if (std::string words = step(); all || words != step_drawn_) {
            picture_.restore(ground_, bench_.plan.knob_caption);
            draw_knob_caption(picture_, bench_.plan, faces_, words);
            parts_.push_back(bench_.plan.knob_caption);
            step_drawn_ = std::move(words);
        }
        if (CaptionWords words = caption(); all || words != caption_drawn_) {
            picture_.restore(ground_, bench_.plan.caption);
            draw_caption(picture_, bench_.plan, faces_, words);
            parts_.push_back(bench_.plan.caption);
            caption_drawn_ = std::move(words);
        }
    } else if (all || strip_old_) {
        picture_.restore(ground_, bench_.plan.panel);
        draw_lonely_mistakes();
        parts_.push_back(bench_.plan.panel);
    }
    if (std::string hint = hint_of(bench_); hint != hint_drawn_) {
        hint_drawn_ = std::move(hint);
        strip_old_ = true;
    }
    if (all || strip_old_ || judged) refresh_strip();

    turned_drawn_ = turned;
    judged_drawn_ = piece_.judged();
    all_old_ = strip_old_ = false;
    if (all) parts_ = {picture_.all()};
}

void Scene::compose() {
    for (const Area& part : side_.changed())
        parts_.push_back(part);
    if (std::exchange(lost_, false)) parts_ = {picture_.all()};
    if (parts_.empty()) return;
    // What is over the bench is drawn again wherever the bench below it changed.
    for (const Area& part : parts_) {
        shown_.restore(picture_, part);
        side_.draw(part);
    }
    side_.drawn();
    pane_.show(shown_, parts_);
    parts_.clear();
}

void Scene::refresh(double turned) {
    draw_bench(turned);
    compose();
}

}  // namespace dialplate

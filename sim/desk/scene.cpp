#include "sim/desk/scene.hpp"

#include "sim/desk/keys.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>
#include <cstdio>
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
    return reason.empty() ? load(faces_.large, "legend14.bdf", 14) : reason;
}

void Scene::arrange(int zoom) {
    const WindowSize size = pane_.size();
    const bool empty = piece_.prototype() == nullptr;
    plan_ = empty ? plan_empty_window(size) : plan_window(piece_.layout(), size, zoom);
    faces_.small.enlarge(plan_.letter);
    faces_.large.enlarge(plan_.letter);
    ground_ = Canvas(size.width, size.height);
    picture_ = Canvas(size.width, size.height);
    if (empty)
        draw_plate(ground_, plan_);
    else
        draw_panel(ground_, plan_, faces_, piece_.layout().title);
    all_old_ = true;
}

void Scene::sent(const Update& update) {
    for (const SentWindow& window : update.windows)
        glass_old_ = around(glass_old_, window.box);
}

CaptionWords Scene::caption() const {
    const Layout& layout = piece_.layout();
    const int page = piece_.prototype()->page();
    const int width = layout.glass_width(), height = layout.glass_height();
    std::string words = layout.display.name;
    words += size_words("   %.0f x %.0f px", width, height);
    words += size_words(
        "   %.1f x %.1f mm", width * layout.pitch_x().value, height * layout.pitch_y().value);
    std::string shown = layout.pages[static_cast<std::size_t>(page)].name;
    if (layout.pages.size() > 1)
        shown += "  " + std::to_string(page + 1) + " of " + std::to_string(layout.pages.size());
    return {std::move(words), std::move(shown)};
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
    const int unit = plan_.letter;
    const int left = plan_.panel.x + 40 * unit;
    const int room = plan_.panel.width - 80 * unit;
    int y = plan_.panel.y + 40 * unit;
    faces_.large.draw(picture_,
                      left,
                      y,
                      faces_.large.fitted("Nothing to show yet: the file has mistakes.", room),
                      {.ink = tint::engraved});
    y += 34 * unit;
    for (const Finding& mistake : piece_.mistakes()) {
        if (y + 20 * unit > plan_.panel.bottom()) break;
        faces_.small.draw(picture_,
                          left,
                          y,
                          faces_.small.fitted(gnu_line(piece_.file(), mistake), room),
                          {.ink = tint::quiet});
        y += 17 * unit;
    }
}

void Scene::refresh_strip(const View& view) {
    Status status;
    status.file = piece_.file();
    status.mistakes = piece_.mistakes();
    status.shown_is_old = piece_.prototype() != nullptr;
    status.zoom = plan_.zoom;
    if (piece_.ledger()) status.flash = share_of(piece_.ledger()->flash);
    status.findings = piece_.findings();
    // The worst is written out first.
    if (status.findings)
        std::stable_sort(
            status.findings->begin(),
            status.findings->end(),
            [](const Finding& a, const Finding& b) { return a.severity < b.severity; });
    status.chosen = view.chosen;
    draw_strip(picture_, plan_, faces_, status);
    parts_.push_back(plan_.strip);
}

void Scene::refresh_glass() {
    const Layout& layout = piece_.layout();
    parts_.push_back(
        draw_glass(picture_, plan_, piece_.prototype()->glass(), layout.glass_width(), glass_old_));
    glass_old_ = {};
}

void Scene::refresh(const View& view) {
    const bool running = piece_.prototype() != nullptr;
    const bool judged = piece_.judged() != judged_drawn_;
    const bool changed =
        glass_old_.width > 0 || view.turned != turned_drawn_ || strip_old_ || judged;
    // The list lies over everything else: with it, and when it goes, all is drawn.
    const bool all = all_old_ || view.keys_shown != keys_drawn_ || (view.keys_shown && changed);
    if (all) picture_.restore(ground_, picture_.all());

    if (running) {
        if (all) glass_old_ = {0, 0, piece_.layout().glass_width(), piece_.layout().glass_height()};
        if (glass_old_.width > 0) refresh_glass();
        if (all || view.turned != turned_drawn_) {
            picture_.restore(ground_, plan_.knob_area());
            draw_knob(picture_, plan_, view.turned);
            parts_.push_back(plan_.knob_area());
        }
        if (std::string words = step(); all || words != step_drawn_) {
            picture_.restore(ground_, plan_.knob_caption);
            draw_knob_caption(picture_, plan_, faces_, words);
            parts_.push_back(plan_.knob_caption);
            step_drawn_ = std::move(words);
        }
        if (CaptionWords words = caption(); all || words != caption_drawn_) {
            picture_.restore(ground_, plan_.caption);
            draw_caption(picture_, plan_, faces_, words);
            parts_.push_back(plan_.caption);
            caption_drawn_ = std::move(words);
        }
    } else if (all || strip_old_) {
        picture_.restore(ground_, plan_.panel);
        draw_lonely_mistakes();
        parts_.push_back(plan_.panel);
    }
    if (all || strip_old_ || judged) refresh_strip(view);
    if (all && view.keys_shown) draw_keys(picture_, plan_, faces_);

    turned_drawn_ = view.turned;
    keys_drawn_ = view.keys_shown;
    judged_drawn_ = piece_.judged();
    all_old_ = strip_old_ = false;
    if (all) parts_ = {picture_.all()};
    pane_.show(picture_, parts_);
    parts_.clear();
}

}  // namespace dialplate

#include "sim/desk/touching.hpp"

#include "sim/desk/exercise.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace dialplate {
namespace {

// No more than three flashes in any second (WCAG 2.2, SC 2.3.1; SAF-09): one begins every 340 ms at most.
constexpr std::uint64_t between_outlines_ms = 340;
constexpr std::uint64_t outline_ms = 170;
/// Readings that move by themselves are written down a few times a second: more cannot be read.
constexpr std::uint64_t between_readings_ms = 500;
/// An update seldom has more; a page has as many as items and digits.
constexpr std::size_t most_outlines = 400;

/// What a value says, in words.
std::string words_of(const Layout& layout, const Prototype& prototype, ValueId id) {
    const Value& value = layout.values[static_cast<std::size_t>(id)];
    const std::int32_t now = prototype.get(id);
    if (value.type == ValueType::choice) return value.choices[static_cast<std::size_t>(now)].text;
    if (value.type == ValueType::flag) return now != 0 ? "on" : "off";
    return std::to_string(now) + (value.unit.empty() ? "" : " " + value.unit);
}

/// What a key did, as far as the layout says.
std::string outcome_of(const Layout& layout, const Prototype& prototype, const KeyEvent& event) {
    for (const Page& page : layout.pages)
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key || item.name != event.name) continue;
            const Action& action = event.kind == KeyEventKind::hold ? item.key.hold : item.key.tap;
            const bool acts = event.kind == KeyEventKind::hold ||
                              event.kind == KeyEventKind::repeat ||
                              event.kind == KeyEventKind::release;
            if (!acts || action.kind == ActionKind::none) return {};
            if (action.kind == ActionKind::page)
                return "page " + layout.pages[static_cast<std::size_t>(action.page)].name;
            return layout.values[static_cast<std::size_t>(action.value)].name + " " +
                   words_of(layout, prototype, action.value);
        }
    return {};
}

}  // namespace

void Touching::begin() {
    bench_.hand.finger.reset();
    bench_.hand.sent.clear();
    waiting_.clear();
    if (bench_.piece.prototype() != nullptr)
        bench_.journal.begin(bench_.piece.layout(), bench_.piece.built());
}

GlassPixel Touching::landing(const GlassPixel& aimed) const {
    const Layout& layout = bench_.piece.layout();
    return {std::clamp(aimed.x + off_.x, 0, layout.glass_width() - 1),
            std::clamp(aimed.y + off_.y, 0, layout.glass_height() - 1)};
}

Update Touching::press(const GlassPixel& point) {
    off_ = {};
    if (bench_.habits.finger.scattered) {
        const Layout& layout = bench_.piece.layout();
        std::normal_distribution<double> spread(0.0, layout.touch.scatter.value);
        off_ = {static_cast<int>(std::lround(spread(chance_) / layout.pitch_x().value)),
                static_cast<int>(std::lround(spread(chance_) / layout.pitch_y().value))};
    }
    if (bench_.trial) {
        const GlassPixel there = landing(point);
        bench_.trial->touched(there.x, there.y, situation_of(bench_), bench_.now_ms);
    }
    return slide(point);
}

Update Touching::slide(const GlassPixel& point) {
    const GlassPixel there = landing(point);
    bench_.hand.finger = there;
    bench_.piece.prototype()->touch(there.x, there.y);
    Update update = settle("touch");
    hear();
    return update;
}

Update Touching::lift() {
    bench_.hand.finger.reset();
    bench_.piece.prototype()->lift();
    Update update = settle("key");
    hear();
    return update;
}

Update Touching::pass(int milliseconds) {
    Update update = bench_.piece.prototype()->pass(milliseconds);
    hear();
    for (const SentWindow& window : update.windows)
        if (waiting_.size() < most_outlines) waiting_.push_back(window.box);
    if (update.sent.pixels > 0 && bench_.now_ms - told_at_ >= between_readings_ms) {
        told_at_ = bench_.now_ms;
        bench_.journal.sent(bench_.piece.layout(), "reading", update, bench_.now_ms);
        news_ = true;
    }
    return update;
}

Update Touching::settle(const std::string& cause) {
    return written_down(cause, bench_.piece.prototype()->settle());
}

Update Touching::redraw() {
    return written_down("page drawn again", bench_.piece.prototype()->redraw());
}

Update Touching::written_down(const std::string& cause, Update update) {
    if (update.sent.pixels == 0) return update;
    bench_.journal.sent(bench_.piece.layout(), cause, update, bench_.now_ms);
    for (const SentWindow& window : update.windows)
        if (waiting_.size() < most_outlines) waiting_.push_back(window.box);
    news_ = true;
    return update;
}

void Touching::hear() {
    for (KeyEvent& event : bench_.piece.prototype()->heard()) {
        HeardEvent heard;
        heard.value = outcome_of(bench_.piece.layout(), *bench_.piece.prototype(), event);
        heard.event = std::move(event);
        heard.at_ms = bench_.now_ms;
        bench_.journal.heard(std::move(heard));
        news_ = true;
    }
}

bool Touching::fade() {
    std::vector<Box>& sent = bench_.hand.sent;
    if (!bench_.habits.show_windows) {
        waiting_.clear();
        return !std::exchange(sent, {}).empty();
    }
    const std::uint64_t since = bench_.now_ms - outlined_at_;
    if (!waiting_.empty() && since >= between_outlines_ms) {
        sent = std::exchange(waiting_, {});
        outlined_at_ = bench_.now_ms;
        return true;
    }
    if (!sent.empty() && since >= outline_ms) {
        sent.clear();
        return true;
    }
    return false;
}

}  // namespace dialplate

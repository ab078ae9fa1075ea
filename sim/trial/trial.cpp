#include "sim/trial/trial.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// From a glass pixel's middle to the nearest point of a box, in mm; 0 inside.
double beside(const Layout& layout, const Box& box, int x, int y) {
    const auto outside = [](double at, int low, int high) {
        return std::max({low - at, 0.0, at - high});
    };
    return std::hypot(outside(x + 0.5, box.x, box.right()) * layout.pitch_x().value,
                      outside(y + 0.5, box.y, box.bottom()) * layout.pitch_y().value);
}

Milliseconds between(std::uint64_t from, std::uint64_t to) {
    return Milliseconds{static_cast<double>(to - from)};
}

}  // namespace

Trial::Trial(const Layout& layout, std::uint32_t seed, int tasks)
    : layout_(layout), seed_(seed), count_(tasks), source_(layout_, seed) {}

void Trial::begin(const Situation& now, std::uint64_t now_ms) {
    task_ = source_.next(now);
    task_began_ = since_ = now_ms;
}

void Trial::touched(int x, int y, const Situation& now, std::uint64_t now_ms) {
    if (!task_) return;
    const Item* aim = nullptr;
    double least = 0.0;
    for (const Item* key : keys_towards(*task_, layout_, now)) {
        const double distance = beside(layout_, key->box, x, y);
        if (aim == nullptr || distance < least) {
            aim = key;
            least = distance;
        }
    }
    // Nothing was to be touched: to tune, one may set another step first, and nobody says how.
    if (aim == nullptr) return;
    TrialTouch touch;
    touch.task = static_cast<int>(outcomes_.size());
    touch.page = now.page;
    touch.x = x;
    touch.y = y;
    touch.key = aim->pointer;
    touch.name = aim->name;
    touch.hit = least == 0.0;
    touch.near = least <= slip_mm;
    const Box& box = aim->box;
    touch.off_x = layout_.pitch_x() * (x + 0.5 - (box.x + box.width / 2.0));
    touch.off_y = layout_.pitch_y() * (y + 0.5 - (box.y + box.height / 2.0));
    touch.after = between(since_, now_ms);
    touches_.push_back(std::move(touch));
    since_ = now_ms;
}

void Trial::close(bool done, std::uint64_t now_ms) {
    outcomes_.push_back({task_->words, task_->kind, done, between(task_began_, now_ms)});
    task_.reset();
}

bool Trial::look(const Situation& now, std::uint64_t now_ms) {
    if (!task_ || !holds(*task_, now)) return false;
    close(true, now_ms);
    if (static_cast<int>(outcomes_.size()) < count_) begin(now, now_ms);
    return true;
}

void Trial::leave(std::uint64_t now_ms) {
    if (task_) close(false, now_ms);
}

int Trial::done() const {
    return static_cast<int>(std::count_if(
        outcomes_.begin(), outcomes_.end(), [](const TaskOutcome& o) { return o.done; }));
}

}  // namespace dialplate

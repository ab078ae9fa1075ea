#include "sim/desk/journal.hpp"

#include "sim/ledger/draw_time.hpp"

#include <utility>

namespace dialplate {

void Journal::begin(const Layout& layout, const BuiltImage& built) {
    parts_ = parts_used(layout, built);
}

void Journal::sent(const Layout& layout,
                   const std::string& cause,
                   const Update& update,
                   std::uint64_t now_ms) {
    if (update.sent.pixels == 0) return;
    Happening happening;
    happening.event = cause;
    happening.update = update;
    SentUpdate entry;
    entry.time = timed(happening, layout, parts_);
    entry.windows = update.windows;
    entry.at_ms = now_ms;
    updates_.push_back(std::move(entry));
    if (updates_.size() > most) updates_.pop_front();
}

void Journal::heard(HeardEvent event) {
    events_.push_back(std::move(event));
    if (events_.size() > most) events_.pop_front();
}

void Journal::clear() {
    updates_.clear();
    events_.clear();
}

const char* name_of(KeyEventKind kind) {
    constexpr const char* names[] = {"press", "hold", "repeat", "release", "slide off"};
    return names[static_cast<std::size_t>(kind)];
}

}  // namespace dialplate

// touch-spacing: a key under the minimum size stands clear of the others by the exact circle rule; and
// keys a finger could mistake for each other have a gap between them.
#include "sim/check/key_targets.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/sweep.hpp"
#include "sim/check/wording.hpp"

#include <cmath>
#include <optional>

namespace dialplate::rule {

namespace {

/// The neighbour that leaves a key the least room.
struct Tightest {
    std::optional<CircleRoom> room;
    const Item* by = nullptr;
};

struct Nearest {
    std::optional<Millimetres> gap;
    const Item* to = nullptr;
};

void keep_tightest(Tightest& kept, const KeyTarget& key, const KeyTarget& other) {
    if (!undersized(key.target)) return;
    const CircleRoom room = circle_room(key.target, other.target);
    if (room.enough()) return;
    if (kept.room &&
        kept.room->needed.value - kept.room->found.value >= room.needed.value - room.found.value)
        return;
    kept = {.room = room, .by = other.item};
}

void keep_nearest(Nearest& kept, const KeyTarget& key, const KeyTarget& other) {
    const bool both_large = key.target.narrowest().value >= thumb_series.value - length_slack &&
                            other.target.narrowest().value >= thumb_series.value - length_slack;
    if (both_large) return;
    const Millimetres gap = gap_between(key.target, other.target);
    if (gap.value >= advised_gap.value - length_slack) return;
    if (kept.gap && *kept.gap <= gap) return;
    kept = {.gap = gap, .to = other.item};
}

std::string circle_sentence(const KeyTarget& key, const Tightest& tightest) {
    const CircleRoom& room = *tightest.room;
    const bool to_circle = room.needed.value > least_target.value * 0.75;
    return called(*key.item) + " is " + number(key.target.width().value, 2) + " x " +
           number(key.target.height().value, 2) + " mm, under 6.35 mm, and its middle is " +
           number(room.found.value, 2) + " mm from " + (to_circle ? "the middle of " : "") +
           called(*tightest.by) + ", needed are " + number(room.needed.value, 3) +
           " mm: move them " + number(room.needed.value - room.found.value, 2) +
           " mm apart or make it 6.35 mm both ways";
}

}  // namespace

void touch_spacing(const Subject& subject, std::vector<Finding>& found) {
    const double pitch = std::min(subject.layout.pitch_x().value, subject.layout.pitch_y().value);
    // Circles meet at most one diameter apart; gaps matter over less.
    const int reach = static_cast<int>(std::ceil(least_target.value / pitch));
    for (const Page& page : subject.layout.pages) {
        const std::vector<KeyTarget> keys = targets_of(page, subject.layout);
        std::vector<Box> boxes;
        boxes.reserve(keys.size());
        for (const KeyTarget& key : keys)
            boxes.push_back(key.item->box);

        std::vector<Tightest> tightest(keys.size());
        std::vector<Nearest> nearest(keys.size());
        sweep_near(boxes, reach, [&](std::size_t a, std::size_t b) {
            keep_tightest(tightest[a], keys[a], keys[b]);
            keep_tightest(tightest[b], keys[b], keys[a]);
            const auto [earlier, later] = std::minmax(a, b);
            keep_nearest(nearest[later], keys[later], keys[earlier]);
        });
        for (std::size_t i = 0; i < keys.size(); ++i) {
            if (tightest[i].room) {
                add_finding(found,
                            Severity::must,
                            keys[i].item->pointer,
                            {tightest[i].room->found.value, tightest[i].room->needed.value, "mm"},
                            circle_sentence(keys[i], tightest[i]));
            } else if (nearest[i].gap) {
                add_finding(found,
                            Severity::note,
                            keys[i].item->pointer,
                            {nearest[i].gap->value, advised_gap.value, "mm"},
                            called(*keys[i].item) + " is " + number(nearest[i].gap->value, 2) +
                                " mm from " + called(*nearest[i].to) +
                                ", advised are 3 mm unless both are 9.6 mm both ways",
                            "J. Human Ergology 25, c. 1996: gaps of 3 to 6 mm are best (TCH-11)");
            }
        }
    }
}

}  // namespace dialplate::rule

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

constexpr RuleSource touch_spacing_sources[] = {
    {"WCAG 2.2 SC 2.5.8, spacing exception (TCH-03)", Trust::read},
    {"J. Human Ergology 25, c. 1996: gaps of 3 to 6 mm are best (TCH-11)", Trust::read},
};

constexpr RuleFigure touch_spacing_figures[] = {
    {"advised_gap_mm", "mm", "advised gap between keys under `ample_mm`", 3.0, 0.0, 20.0},
    {"ample_mm", "mm", "size both ways from which two keys need no gap", 9.6, 1.0, 50.0},
};

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

/// The gap that is advised, and the size from which none is needed.
struct Advice {
    Millimetres gap, ample;
};

void keep_nearest(Nearest& kept,
                  const KeyTarget& key,
                  const KeyTarget& other,
                  const Advice& advice) {
    const bool both_large = key.target.narrowest().value >= advice.ample.value - length_slack &&
                            other.target.narrowest().value >= advice.ample.value - length_slack;
    if (both_large) return;
    const Millimetres gap = gap_between(key.target, other.target);
    if (gap.value >= advice.gap.value - length_slack) return;
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

void find_touch_spacing(const Subject& subject, std::vector<Finding>& found) {
    const double pitch = std::min(subject.layout.pitch_x().value, subject.layout.pitch_y().value);
    const Advice advice{
        .gap = Millimetres{figure(subject.layout, rule::touch_spacing, "advised_gap_mm")},
        .ample = Millimetres{figure(subject.layout, rule::touch_spacing, "ample_mm")}};
    // Circles meet at most one diameter apart.
    const int reach = static_cast<int>(std::ceil(std::max(least_target, advice.gap).value / pitch));
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
            keep_nearest(nearest[later], keys[later], keys[earlier], advice);
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
                            {nearest[i].gap->value, advice.gap.value, "mm"},
                            called(*keys[i].item) + " is " + number(nearest[i].gap->value, 2) +
                                " mm from " + called(*nearest[i].to) + ", advised are " +
                                number(advice.gap.value, 1) + " mm unless both are " +
                                number(advice.ample.value, 1) + " mm both ways",
                            touch_spacing_sources[1].text);
            }
        }
    }
}

}  // namespace

const Rule touch_spacing{
    .name = "touch-spacing",
    .sentence =
        "A key under 6.35 mm keeps a circle of that diameter clear of its neighbours (must); gaps "
        "of 3 mm are advised between keys under 9.6 mm (note).",
    .computed =
        "For a key under 24 CSS pixels (6.35 mm) either way: the distance from its middle to the "
        "nearest point of every other key, and to the middle of every other such key. For other "
        "keys: the gap between their edges.",
    .formula =
        "distance to a key >= 3.175 mm, to the middle of another small one >= 6.35 mm; touching "
        "exactly passes",
    .sources = touch_spacing_sources,
    .figures = touch_spacing_figures,
    .find = find_touch_spacing,
};

}  // namespace dialplate::rule

// touch-reach: a finger pad reaches the middle of a key beside the raised edge of the bezel.
#include "sim/check/bezel_geometry.hpp"
#include "sim/check/item_changes.hpp"
#include "sim/check/key_targets.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_reach_sources[] = {
    {"geometry of a round finger pad beside a square edge", Trust::derived},
    {"finger pads touch 8 to 14 mm across (TCH-18)", Trust::memory},
};

/// @return The way into [low, high]; into its middle where that is empty.
Millimetres way_into(Millimetres at, Millimetres low, Millimetres high) {
    if (low > high) return (low + high) * 0.5 - at;
    return std::clamp(at, low, high) - at;
}

/// Whole pixels that are at least so far, away from 0.
int pixels_along(Millimetres way, Millimetres pitch) {
    const double pixels = way / pitch;
    return static_cast<int>(pixels < 0.0 ? std::floor(pixels + 1e-9) : std::ceil(pixels - 1e-9));
}

void find_touch_reach(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    if (!layout.opening) return;
    const Opening& opening = *layout.opening;
    const Millimetres reach = pad_reach(layout.touch.finger, opening.depth);
    const Millimetres right = opening.left + opening.width, bottom = opening.top + opening.height;
    for (const Page& page : layout.pages) {
        for (const KeyTarget& key : targets_of(page, layout)) {
            const Millimetres x = (key.target.left + key.target.right) * 0.5;
            const Millimetres y = (key.target.top + key.target.bottom) * 0.5;
            const Millimetres nearest =
                std::min({x - opening.left, right - x, y - opening.top, bottom - y});
            if (nearest.value >= reach.value - length_slack) continue;
            const Way way{.across = pixels_along(way_into(x, opening.left + reach, right - reach),
                                                 layout.pitch_x()),
                          .down = pixels_along(way_into(y, opening.top + reach, bottom - reach),
                                               layout.pitch_y())};
            add_finding(found,
                        Severity::should,
                        key.item->pointer,
                        {nearest.value, reach.value, "mm"},
                        "the middle of " + called(*key.item) + " is " + number(nearest.value, 2) +
                            " mm from the edge of the opening, where a finger of " +
                            number(layout.touch.finger.value, 1) + " mm beside a bezel " +
                            number(opening.depth.value, 1) + " mm high reaches no nearer than " +
                            number(reach.value, 2) + " mm: move it " + in_words(way));
            found.back().cure.push_back(moved(*key.item, way));
        }
    }
}

}  // namespace

const Rule touch_reach{
    .name = "touch-reach",
    .sentence = "A finger reaches the middle of every key beside the raised edge of the opening.",
    .computed =
        "How near the middle of a round finger pad of radius r (half of `touch.finger_mm`, 10 mm "
        "when "
        "left out) comes to an edge that stands d (`opening.depth_mm`) above the glass, against "
        "the "
        "distance from the middle of each key to the nearest edge of the opening.",
    .formula = "sqrt(d (2 r - d)), r where d >= r",
    .sources = touch_reach_sources,
    .figures = {},
    .find = find_touch_reach,
};

}  // namespace dialplate::rule

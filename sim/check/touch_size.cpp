// touch-size: a key is large enough for the thumb.
//
// The minimum of 24 CSS pixels is not judged here: below it a key may still pass by its distance from
// the others, which is the rule touch-spacing.
#include "sim/check/key_targets.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <cmath>

namespace dialplate::rule {

namespace {

/// The least pixels that span a length.
int pixels_over(Millimetres length, Millimetres pitch) {
    return static_cast<int>(std::ceil(length / pitch - 1e-9));
}

}  // namespace

void touch_size(const Subject& subject, std::vector<Finding>& found) {
    const Millimetres across = subject.layout.pitch_x(), down = subject.layout.pitch_y();
    for (const Page& page : subject.layout.pages) {
        for (const KeyTarget& key : targets_of(page, subject.layout)) {
            const bool series = tapped_in_series(key.item->key);
            const Millimetres needed = series ? thumb_series : thumb_tap;
            const Millimetres narrowest = key.target.narrowest();
            if (narrowest.value >= needed.value - length_slack) continue;
            add_finding(
                found,
                Severity::should,
                key.item->pointer,
                {narrowest.value, needed.value, "mm"},
                called(*key.item) + " is " + number(key.target.width().value, 2) + " x " +
                    number(key.target.height().value, 2) + " mm, a thumb needs " +
                    number(needed.value, 1) + " mm both ways" +
                    (series ? " to tap it several times" : "") + " (a finger hits it " +
                    number(100.0 * hit_probability(key.target), 1) + " % of the time): make it " +
                    std::to_string(std::max(key.item->box.width, pixels_over(needed, across))) +
                    " x " +
                    std::to_string(std::max(key.item->box.height, pixels_over(needed, down))) +
                    " px",
                series ? "Parhi, Karlson, Bederson, MobileHCI 2006: series of taps (TCH-08)"
                       : nullptr);
        }
    }
}

}  // namespace dialplate::rule

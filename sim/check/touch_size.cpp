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

constexpr RuleSource sources[] = {
    {"Parhi, Karlson, Bederson, MobileHCI 2006: one tap (TCH-07)", Trust::read},
    {"Parhi, Karlson, Bederson, MobileHCI 2006: series of taps (TCH-08)", Trust::read},
    {"Avsar, Fischer, Rodden, DASC 2015: 15 mm suffice under vibration (TCH-12), profile mobile",
     Trust::read},
    {"Colle, Hiszem, Ergonomics 47(13), 2004: keys of 20 mm, no better with 25 mm (TCH-10), "
     "profile gloved",
     Trust::read},
};

constexpr RuleFigure figures[] = {
    {"least_mm",
     "mm",
     "least width and height of a key that is tapped once",
     {9.2, 20.0, 15.0},
     1.0,
     50.0},
    {"least_series_mm",
     "mm",
     "least width and height of a key that is tapped several times",
     {9.6, 20.0, 15.0},
     1.0,
     50.0},
};

/// The least pixels that span a length.
int pixels_over(Millimetres length, Millimetres pitch) {
    return static_cast<int>(std::ceil(length / pitch - 1e-9));
}

void find(const Subject& subject, std::vector<Finding>& found) {
    const Millimetres across = subject.layout.pitch_x(), down = subject.layout.pitch_y();
    const Millimetres least{figure(subject.layout, rule::touch_size, "least_mm")};
    const Millimetres least_series{figure(subject.layout, rule::touch_size, "least_series_mm")};
    for (const Page& page : subject.layout.pages) {
        for (const KeyTarget& key : targets_of(page, subject.layout)) {
            const bool series = tapped_in_series(key.item->key);
            const Millimetres needed = series ? least_series : least;
            const Millimetres narrowest = key.target.narrowest();
            if (narrowest.value >= needed.value - length_slack) continue;
            add_finding(
                found,
                Severity::should,
                key.item->pointer,
                {narrowest.value, needed.value, "mm"},
                called(*key.item) + " is " + number(key.target.width().value, 2) + " x " +
                    number(key.target.height().value, 2) + " mm, a finger needs " +
                    number(needed.value, 1) + " mm both ways" +
                    (series ? " to tap it several times" : "") + " (a finger hits it " +
                    number(100.0 * hit_probability(key.target), 1) + " % of the time): make it " +
                    std::to_string(std::max(key.item->box.width, pixels_over(needed, across))) +
                    " x " +
                    std::to_string(std::max(key.item->box.height, pixels_over(needed, down))) +
                    " px",
                series ? sources[1].text : nullptr);
        }
    }
}

}  // namespace

const Rule touch_size{
    .name = "touch-size",
    .sentence = "A key is 9.2 mm wide and high, 9.6 mm when it is tapped in series.",
    .computed =
        "Width and height of a key in millimetres, from its pixels and the pitch of the display; "
        "the narrower one counts. A key that repeats or steps a value is tapped in series.",
    .formula = "min(width * pitch across, height * pitch down) >= least",
    .sources = sources,
    .figures = figures,
    .find = find,
};

}  // namespace dialplate::rule

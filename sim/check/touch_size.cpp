// touch-size: a key is large enough for the thumb.
//
// The minimum of 24 CSS pixels is not judged here: below it a key may still pass by its distance from
// the others, which is the rule touch-spacing.
#include "sim/check/item_changes.hpp"
#include "sim/check/key_targets.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_size_sources[] = {
    {"Parhi, Karlson, Bederson, MobileHCI 2006: one tap (TCH-07)", Trust::read},
    {"Parhi, Karlson, Bederson, MobileHCI 2006: series of taps (TCH-08)", Trust::read},
    {"Avsar, Fischer, Rodden, DASC 2015: 15 mm suffice under vibration (TCH-12), profile mobile",
     Trust::read},
    {"Colle, Hiszem, Ergonomics 47(13), 2004: keys of 20 mm, no better with 25 mm (TCH-10), "
     "profile gloved",
     Trust::read},
};

constexpr RuleFigure touch_size_figures[] = {
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

/// Where a key may be made as large as is wanted: there, or pushed back onto the glass; none where another item
/// is then in the way. Frames are passed over: whether a key crosses their line is for others to say.
std::optional<Box> grown(const Item& key,
                         const Box& wanted,
                         const Page& page,
                         const Layout& layout) {
    if (wanted.width > layout.glass_width() || wanted.height > layout.glass_height())
        return std::nullopt;
    Box box = wanted;
    box.x = std::clamp(box.x, 0, layout.glass_width() - box.width);
    box.y = std::clamp(box.y, 0, layout.glass_height() - box.height);
    for (const Item& item : page.items) {
        if (&item == &key || item.kind == ItemKind::frame) continue;
        if (box.x < item.box.right() && item.box.x < box.right() && box.y < item.box.bottom() &&
            item.box.y < box.bottom())
            return std::nullopt;
    }
    return box;
}

void find_touch_size(const Subject& subject, std::vector<Finding>& found) {
    const Millimetres across = subject.layout.pitch_x(), down = subject.layout.pitch_y();
    const Millimetres least{figure(subject.layout, rule::touch_size, "least_mm")};
    const Millimetres least_series{figure(subject.layout, rule::touch_size, "least_series_mm")};
    const FingerSpread finger{.across = subject.layout.touch.scatter,
                              .down = subject.layout.touch.scatter};
    for (const Page& page : subject.layout.pages) {
        for (const KeyTarget& key : targets_of(page, subject.layout)) {
            const bool series = tapped_in_series(key.item->key);
            const Millimetres needed = series ? least_series : least;
            const Millimetres narrowest = key.target.narrowest();
            if (narrowest.value >= needed.value - length_slack) continue;
            // About its middle.
            const Box& is = key.item->box;
            Box wanted = is;
            wanted.width = std::max(is.width, pixels_over(needed, across));
            wanted.height = std::max(is.height, pixels_over(needed, down));
            wanted.x -= (wanted.width - is.width) / 2;
            wanted.y -= (wanted.height - is.height) / 2;
            add_finding(found,
                        Severity::should,
                        key.item->pointer,
                        {narrowest.value, needed.value, "mm"},
                        called(*key.item) + " is " + number(key.target.width().value, 2) + " x " +
                            number(key.target.height().value, 2) + " mm, a finger needs " +
                            number(needed.value, 1) + " mm both ways" +
                            (series ? " to tap it several times" : "") + " (a finger hits it " +
                            number(100.0 * hit_probability(key.target, finger), 1) +
                            " % of the time): make it " + std::to_string(wanted.width) + " x " +
                            std::to_string(wanted.height) + " px",
                        series ? touch_size_sources[1].text : nullptr);
            if (const auto box = grown(*key.item, wanted, page, subject.layout))
                found.back().cure = reshaped(*key.item, *box);
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
    .sources = touch_size_sources,
    .figures = touch_size_figures,
    .find = find_touch_size,
};

}  // namespace dialplate::rule

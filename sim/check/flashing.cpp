// flashing: nothing on the glass flashes so fast and so large that it can hurt somebody.
//
// Modelled: whatever the engine draws differently when a value changes, a page is turned or the palette is
// changed, pixel by pixel; all that changes fast on a page flashes at once. The field of 10 degrees is taken
// to hold the whole glass. Left out, on the safe side: fine patterns (SAF-13), and that a slow display shows
// fewer changes than there are.
#include "sim/check/flashing_pixels.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/wording.hpp"
#include "sim/layout/item_values.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace dialplate::rule {

namespace {

constexpr RuleSource flashing_sources[] = {
    {"WCAG 2.2 SC 2.3.1: three flashes a second, general and red; area (SAF-09 to SAF-11)",
     Trust::read},
    {"WCAG 2.2, note on red flash; ISO 9241-391 (SAF-12)", Trust::read},
    {"tapping tests of one finger: about 50 taps in 10 s", Trust::memory},
};

constexpr RuleFigure flashing_figures[] = {
    {"most_per_second",
     "a second",
     "flashes in any one second; a flash is a pair of changes",
     3.0,
     0.1,
     100.0},
    {"most_area_sr", "sr", "solid angle of all that flashes at once", 0.006, 0.0001, 1.0},
    {"taps_per_second",
     "a second",
     "changes of a page or palette by hand, at the fastest",
     5.0,
     0.1,
     100.0},
};

/// How often something changes at its fastest, and how to slow it down.
struct Rate {
    double per_second = 0;
    std::string slower_by;  ///< "up to 6 changes a second of value "alarm""
};

bool changes_value(const Action& action, ValueId value) {
    const bool acts = action.kind == ActionKind::set || action.kind == ActionKind::step ||
                      action.kind == ActionKind::toggle;
    return acts && action.value == value;
}

class Watch {
public:
    Watch(const Subject& subject, std::vector<Finding>& found)
        : subject_(subject),
          layout_(subject.layout),
          most_(of_rule("most_per_second")),
          most_area_(of_rule("most_area_sr") * layout_.viewing.distance.value *
                     layout_.viewing.distance.value),
          pixel_(layout_.pitch_x().value * layout_.pitch_y().value),
          by_hand_(of_rule("taps_per_second")),
          found_(found) {
        const bool repeats =
            std::any_of(layout_.pages.begin(), layout_.pages.end(), [&](const Page& page) {
                return std::any_of(page.items.begin(), page.items.end(), [](const Item& item) {
                    return item.kind == ItemKind::key && item.key.repeat;
                });
            });
        for (std::size_t i = 0; i < layout_.values.size(); ++i)
            rates_.push_back(rate_of(static_cast<ValueId>(i), repeats));
    }

    void judge() {
        for (std::size_t page = 0; page < layout_.pages.size(); ++page) {
            judge_values(static_cast<int>(page));
            if (too_fast(by_hand_)) judge_turns(static_cast<int>(page));
        }
        if (too_fast(by_hand_) && layout_.palettes.size() > 1) judge_palettes();
    }

private:
    [[nodiscard]] double of_rule(const char* name) const {
        return figure(layout_, rule::flashing, name);
    }
    [[nodiscard]] bool too_fast(double changes) const { return changes / 2.0 > most_ + slack; }
    [[nodiscard]] double area(std::int64_t pixels) const {
        return pixel_ * static_cast<double>(pixels);
    }

    [[nodiscard]] Rate rate_of(ValueId id, bool repeats) const {
        const Value& value = layout_.values[static_cast<std::size_t>(id)];
        const std::string changes =
            "up to " + number(2.0 * most_) + " changes a second of value \"" + value.name + "\"";
        Rate rate{.per_second = value.per_second.value_or(0.0), .slower_by = changes};
        if (value.role == Role::frequency && !value.per_second)
            rate.per_second = figure(layout_, rule::update_rate, "knob_per_second");
        const double repeated = 1000.0 / layout_.touch.repeat_every_ms;
        if (repeats && repeated > rate.per_second && repeated_by_key(id)) {
            rate = {.per_second = repeated,
                    .slower_by = "\"repeat_every_ms\" of " +
                                 number(std::ceil(1000.0 / (2.0 * most_))) + " or more"};
        }
        return rate;
    }
    [[nodiscard]] bool repeated_by_key(ValueId value) const {
        for (const Page& page : layout_.pages)
            for (const Item& item : page.items)
                if (item.kind == ItemKind::key && item.key.repeat &&
                    changes_value(item.key.tap, value))
                    return true;
        return false;
    }

    FlashingPixels& drawn() {
        if (!drawn_) drawn_.emplace(layout_, subject_.image);
        return *drawn_;
    }

    void judge_values(int at) {
        const Page& page = layout_.pages[static_cast<std::size_t>(at)];
        std::vector<ValueId> fast;
        std::vector<const Item*> items;
        std::int64_t boxes = 0;
        for (const Item& item : page.items) {
            bool counts = false;
            for (const ValueId value : values_of(item)) {
                if (!too_fast(rates_[static_cast<std::size_t>(value)].per_second)) continue;
                counts = true;
                if (std::find(fast.begin(), fast.end(), value) == fast.end()) fast.push_back(value);
            }
            if (!counts) continue;
            items.push_back(&item);
            boxes += std::int64_t{item.box.width} * item.box.height;
        }
        // No more can flash than the boxes hold: most pages need not be drawn.
        if (area(boxes) <= most_area_ + slack) return;
        FlashingPixels& pixels = drawn();
        pixels.begin(at);
        for (const ValueId value : fast)
            pixels.add_value(value);
        if (area(pixels.count()) <= most_area_ + slack) return;
        report_items(items, pixels);
    }

    /// The item in which most flashes speaks for all of the page.
    void report_items(const std::vector<const Item*>& items, const FlashingPixels& pixels) {
        const Item* first = nullptr;
        std::int64_t most = 0;
        int others = -1;
        for (const Item* const item : items) {
            const std::int64_t inside = count_in(item->box, pixels);
            if (inside == 0) continue;
            ++others;
            if (inside > most) {
                most = inside;
                first = item;
            }
        }
        if (first == nullptr) return;
        const Rate* fastest = nullptr;
        for (const ValueId value : values_of(*first)) {
            const Rate& rate = rates_[static_cast<std::size_t>(value)];
            if (fastest == nullptr || rate.per_second > fastest->per_second) fastest = &rate;
        }
        report(first->pointer,
               called(*first) +
                   (others > 0 ? " and " + counted(others, "other item", "other items") : ""),
               *fastest,
               pixels);
    }

    [[nodiscard]] std::int64_t count_in(const Box& box, const FlashingPixels& pixels) const {
        const int width = layout_.glass_width();
        std::int64_t count = 0;
        for (int y = std::max(0, box.y); y < std::min(layout_.glass_height(), box.bottom()); ++y)
            for (int x = std::max(0, box.x); x < std::min(width, box.right()); ++x)
                count += pixels.pixels()[static_cast<std::size_t>(y * width + x)] != Flash::none;
        return count;
    }

    void judge_turns(int at) {
        const Page& page = layout_.pages[static_cast<std::size_t>(at)];
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            const Action& tap = item.key.tap;
            // Each pair of pages once, from the first of them.
            if (tap.kind != ActionKind::page || tap.page <= at) continue;
            FlashingPixels& pixels = drawn();
            pixels.begin(at);
            pixels.add_turn_to(tap.page);
            if (area(pixels.count()) <= most_area_ + slack) continue;
            const std::string other = layout_.pages[static_cast<std::size_t>(tap.page)].name;
            report(item.pointer,
                   "the turn between pages \"" + page.name + "\" and \"" + other + "\"",
                   {.per_second = by_hand_, .slower_by = "grounds of like lightness"},
                   pixels);
        }
    }

    void judge_palettes() {
        FlashingPixels& pixels = drawn();
        for (std::size_t page = 0; page < layout_.pages.size(); ++page) {
            pixels.begin(static_cast<int>(page));
            pixels.add_palettes();
            if (area(pixels.count()) <= most_area_ + slack) continue;
            report("/palettes",
                   "page \"" + layout_.pages[page].name + "\" in another palette",
                   {.per_second = by_hand_, .slower_by = "palettes of like lightness"},
                   pixels);
            return;
        }
    }

    void report(const std::string& pointer,
                const std::string& what,
                const Rate& rate,
                const FlashingPixels& pixels) {
        const bool red = std::find(pixels.pixels().begin(), pixels.pixels().end(), Flash::red) !=
                         pixels.pixels().end();
        const double flashes = rate.per_second / 2.0;
        add_finding(found_,
                    Severity::must,
                    pointer,
                    {flashes, most_, "flashes a second"},
                    what + " can flash " + number(flashes, 1) + " times a second on " +
                        number(area(pixels.count())) + " mm2" +
                        (red ? ", some of it in saturated red" : "") + ", allowed are " +
                        number(most_) + " on more than " + number(most_area_) + " mm2 at " +
                        number(layout_.viewing.distance.value) + " mm: " + rate.slower_by +
                        ", less area, or states of like lightness are safe",
                    red ? flashing_sources[1].text : nullptr);
    }

    const Subject& subject_;
    const Layout& layout_;
    const double most_, most_area_, pixel_, by_hand_;
    std::vector<Finding>& found_;
    std::vector<Rate> rates_;  ///< By ValueId.
    std::optional<FlashingPixels> drawn_;
};

void find_flashing(const Subject& subject, std::vector<Finding>& found) {
    Watch(subject, found).judge();
}

}  // namespace

const Rule flashing{
    .name = "flashing",
    .sentence = "What flashes does so three times a second at most, or is small.",
    .computed =
        "Half the changes a second of a value: its per_second, the repeats of a key that changes "
        "it, or a knob that is turned fast; of pages and palettes taps by hand. The area is that "
        "of all pixels of a page that such changes take from one colour to another and back by 10 "
        "% of white or more, the darker one below 80 %, or to or from saturated red, as the "
        "engine draws them, in the worst palette; against 0.006 sr at the viewing distance.",
    .formula = "changes a second / 2 <= 3, or area <= 0.006 * distance^2",
    .sources = flashing_sources,
    .figures = flashing_figures,
    .find = find_flashing,
};

}  // namespace dialplate::rule

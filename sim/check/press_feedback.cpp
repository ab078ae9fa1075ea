// press-feedback: a key looks different while it is pressed, and does so at once.
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace dialplate::rule {

namespace {

constexpr RuleSource press_feedback_sources[] = {
    {"common practice, no source", Trust::practice},
    {"Miller 1968; Card et al.: 100 ms feel immediate (BUS-21)", Trust::memory},
};

constexpr RuleFigure press_feedback_figures[] = {
    {"most_ms",
     "ms",
     "time from the touch to the last pixel of the pressed key",
     100.0,
     1.0,
     10000.0},
    {"poll_ms",
     "ms",
     "time between two looks at the touch sheet; the sketch that is written takes 10",
     10.0,
     0.0,
     1000.0},
};

/// A look that says nothing of the pressed state gets one: ink and fill exchanged, as lit keys mostly are.
/// Nothing where that looks the same, or where its author has written a pressed state.
std::vector<Change> exchanged(const Look& look, const Layout& layout) {
    const std::string pointer = look.pointer + "/pressed";
    if (layout.places.contains(pointer)) return {};
    const std::size_t palettes = layout.palettes.empty() ? 1 : layout.palettes.size();
    for (std::size_t palette = 0; palette < palettes; ++palette)
        if (colour_in(layout, look.idle.ink, palette) == colour_in(layout, look.idle.fill, palette))
            return {};
    const auto member = [&](const char* name, PaintId paint) {
        // A paint's name needs no escapes: it has no quotes, backslashes or control characters.
        return std::string("\"") + name + "\": \"" +
               layout.paints.at(static_cast<std::size_t>(paint)).name + "\"";
    };
    return {{.kind = Change::Kind::add,
             .pointer = pointer,
             .value = '{' + member("ink", look.idle.fill) + ", " + member("fill", look.idle.ink) +
                      ", " + member("edge", look.idle.edge) + '}'}};
}

/// The ledger has the press that takes longest, with the name of its key.
void judge_time(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double most = figure(layout, rule::press_feedback, "most_ms");
    const double poll = figure(layout, rule::press_feedback, "poll_ms");
    for (const EventTime& event : subject.ledger.time) {
        const double time = poll + event.time.value;
        if (event.kind != EventKind::key || time <= most) continue;
        const Page& page = layout.pages.at(static_cast<std::size_t>(event.page));
        const auto key = std::find_if(page.items.begin(), page.items.end(), [&](const Item& item) {
            return item.kind == ItemKind::key && item.name == event.what;
        });
        const double left = std::max(0.0, most - poll);
        add_finding(found,
                    Severity::should,
                    key == page.items.end() ? page.pointer : key->pointer,
                    {time, most, "ms"},
                    (key == page.items.end() ? "a key" : called(*key)) +
                        " shows that it is pressed " + number(time, 1) + " ms after the touch, " +
                        number(poll) + " ms until it is noticed and " +
                        number(event.time.value, 1) + " ms of drawing; up to " + number(most) +
                        " ms feel immediate: " +
                        (left > 0.0 ? number(std::ceil(100.0 * (1.0 - left / event.time.value))) +
                                          " % fewer pixels or a faster bus reach it"
                                    : "look at the touch sheet more often"),
                    press_feedback_sources[1].text);
    }
}

void judge_looks(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const std::size_t palettes = layout.palettes.empty() ? 1 : layout.palettes.size();
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            const Look& look = layout.looks.at(static_cast<std::size_t>(item.key.look));
            for (std::size_t palette = 0; palette < palettes; ++palette) {
                const auto same = [&](PaintId a, PaintId b) {
                    return colour_in(layout, a, palette) == colour_in(layout, b, palette);
                };
                const bool differs =
                    !same(look.idle.fill, look.pressed.fill) ||
                    (!item.key.text.empty() && !same(look.idle.ink, look.pressed.ink)) ||
                    (item.key.edge > 0 && !same(look.idle.edge, look.pressed.edge));
                if (differs) continue;
                add_finding(found,
                            Severity::should,
                            item.pointer,
                            called(item) + " looks the same pressed and idle" +
                                in_palette(layout, palette) + ": give look \"" + look.name +
                                "\" another ink, fill or edge when pressed");
                found.back().cure = exchanged(look, layout);
                break;
            }
        }
    }
}

void find_press_feedback(const Subject& subject, std::vector<Finding>& found) {
    judge_looks(subject, found);
    judge_time(subject, found);
}

}  // namespace

const Rule press_feedback{
    .name = "press-feedback",
    .sentence = "A key looks different while it is pressed, within 100 ms of the touch.",
    .computed =
        "Whether fill, ink or edge of a key differ between idle and pressed, as the display holds "
        "them, in every palette; and the time to the next look at the touch sheet with the time "
        "that the ledger predicts for drawing the pressed key, of the key for which it is longest.",
    .formula =
        "RGB565 of fill, ink or edge: idle != pressed; poll_ms + time of the key press <= most_ms",
    .sources = press_feedback_sources,
    .figures = press_feedback_figures,
    .find = find_press_feedback,
};

}  // namespace dialplate::rule

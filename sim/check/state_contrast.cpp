// state-contrast: a lamp that is lit and one that is not, a key that is active and one that is not, can
// be told apart: ink, fill or edge differ by 3:1 in every palette.
#include "sim/check/contrast.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"WCAG 2.2 SC 1.4.11 (CON-05)", Trust::read},
};

constexpr RuleFigure figures[] = {
    {"least", ":1", "least contrast between the two states", 3.0, 1.0, 21.0},
};

struct TwoStates {
    Tones on, off;
    bool has_text = false;
    bool has_edge = false;
    const char* words = "";
};

std::optional<TwoStates> states_of(const Item& item, const Layout& layout) {
    if (item.kind == ItemKind::lamp && item.lamp.when) {
        const Lamp& lamp = item.lamp;
        return TwoStates{.on = lamp.lit,
                         .off = lamp.unlit,
                         .has_text = !lamp.text.empty(),
                         .has_edge = lamp.edge > 0,
                         .words = "lit and unlit"};
    }
    if (item.kind == ItemKind::key && item.key.active_value) {
        const Look& look = layout.looks.at(static_cast<std::size_t>(item.key.look));
        return TwoStates{.on = look.active,
                         .off = look.idle,
                         .has_text = !item.key.text.empty(),
                         .has_edge = item.key.edge > 0,
                         .words = "active and idle"};
    }
    return std::nullopt;
}

void find(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::state_contrast, "least");
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            const std::optional<TwoStates> states = states_of(item, layout);
            if (!states) continue;
            LeastContrast worst{.ratio = 22.0, .palette = 0};
            for (std::size_t palette = 0;
                 palette < std::max<std::size_t>(1, layout.palettes.size());
                 ++palette) {
                const auto apart = [&](PaintId a, PaintId b) {
                    return contrast_on_glass(colour_in(layout, a, palette),
                                             colour_in(layout, b, palette));
                };
                double best = apart(states->on.fill, states->off.fill);
                if (states->has_text) best = std::max(best, apart(states->on.ink, states->off.ink));
                if (states->has_edge)
                    best = std::max(best, apart(states->on.edge, states->off.edge));
                if (best < worst.ratio) worst = {.ratio = best, .palette = palette};
            }
            if (worst.ratio >= needed) continue;
            add_finding(found,
                        Severity::should,
                        item.pointer,
                        {worst.ratio, needed, ":1"},
                        called(item) + ": " + states->words + " differ by " +
                            number(worst.ratio, 2) + ":1 at most" +
                            in_palette(layout, worst.palette) + ", ink, fill or edge needs " +
                            number(needed, 1) + ":1");
        }
    }
}

}  // namespace

const Rule state_contrast{
    .name = "state-contrast",
    .sentence = "A lit lamp and an active key differ from an unlit and an idle one by 3:1.",
    .computed =
        "The best contrast ratio between the two states of a lamp or a key: fill with fill, ink "
        "with ink, edge with edge, in the palette in which that is least.",
    .formula =
        "max over fill, ink and edge of the contrast between the states, as for text-contrast",
    .sources = sources,
    .figures = figures,
    .find = find,
};

}  // namespace dialplate::rule

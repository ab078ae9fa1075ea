// state-contrast: a lamp that is lit and one that is not, a key that is active and one that is not, can
// be told apart: ink, fill or edge differ by 3:1 in every palette.
#include "sim/check/contrast.hpp"
#include "sim/check/nearest_ink.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/two_states.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace dialplate::rule {

namespace {

constexpr RuleSource state_contrast_sources[] = {
    {"WCAG 2.2 SC 1.4.11 (CON-05)", Trust::read},
};

constexpr RuleFigure state_contrast_figures[] = {
    {"least", ":1", "least contrast between the two states", 3.0, 1.0, 21.0},
};

void find_state_contrast(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::state_contrast, "least");
    const PaintCures cures(layout);
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
            const TwoStates& seen = *states;
            PaintCure cure =
                cures.cure({.part = "fill",
                            .paint = seen.on.fill,
                            .against = seen.off.fill,
                            .palette = worst.palette,
                            .colour = ink_that_reaches(
                                {.ink = colour_in(layout, seen.on.fill, worst.palette),
                                 .ground = colour_in(layout, seen.off.fill, worst.palette),
                                 .ratio = needed}),
                            .needed = needed,
                            .ratio = contrast_on_glass});
            add_finding(found,
                        Severity::should,
                        item.pointer,
                        {worst.ratio, needed, ":1"},
                        called(item) + ": " + states->words + " differ by " +
                            number(worst.ratio, 2) + ":1 at most" +
                            in_palette(layout, worst.palette) + ", ink, fill or edge needs " +
                            number(needed, 1) + ":1" + cure.words);
            found.back().cure = std::move(cure.changes);
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
    .sources = state_contrast_sources,
    .figures = state_contrast_figures,
    .find = find_state_contrast,
};

}  // namespace dialplate::rule

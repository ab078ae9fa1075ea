// key-outline: one can see where a key is: its fill or its edge stands out from what is behind it.
#include "sim/check/contrast.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource key_outline_sources[] = {
    {"WCAG 2.2 SC 1.4.11 (CON-05)", Trust::read},
};

constexpr RuleFigure key_outline_figures[] = {
    {"least", ":1", "least contrast of a key's fill or edge", 3.0, 1.0, 21.0},
};

struct Outline {
    double ratio = 22.0;
    std::size_t palette = 0;
};

/// The better of fill and edge against the backdrop, in the palette in which that is worst.
Outline outline_of(const Layout& layout, const Tones& tones, int edge, PaintId behind) {
    Outline worst;
    for (std::size_t palette = 0; palette < std::max<std::size_t>(1, layout.palettes.size());
         ++palette) {
        const std::uint16_t back = colour_in(layout, behind, palette);
        double ratio = contrast_on_glass(colour_in(layout, tones.fill, palette), back);
        if (edge > 0)
            ratio =
                std::max(ratio, contrast_on_glass(colour_in(layout, tones.edge, palette), back));
        if (ratio < worst.ratio) worst = {.ratio = ratio, .palette = palette};
    }
    return worst;
}

void find_key_outline(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::key_outline, "least");
    const PaintCures cures(layout);
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::key) continue;
            const PaintId behind = backdrop_of(item, page);
            const Tones& idle = layout.looks.at(static_cast<std::size_t>(item.key.look)).idle;
            const Outline outline = outline_of(layout, idle, item.key.edge, behind);
            if (outline.ratio >= needed) continue;
            const std::string edge =
                item.key.edge > 0 ? " and its edge " + painted(layout, idle.edge, outline.palette)
                                  : " (it has no edge)";
            const PaintId changes = item.key.edge > 0 ? idle.edge : idle.fill;
            PaintCure cure = cures.cure_of_contrast(
                item.key.edge > 0 ? "edge" : "fill", changes, behind, outline.palette, needed);
            add_finding(found,
                        Severity::should,
                        item.pointer,
                        {outline.ratio, needed, ":1"},
                        called(item) + ": its fill " + painted(layout, idle.fill, outline.palette) +
                            edge + " reach contrast " + number(outline.ratio, 2) +
                            ":1 against what is behind it, " +
                            painted(layout, behind, outline.palette) +
                            in_palette(layout, outline.palette) + ", one of them needs " +
                            number(needed, 1) + ":1" + cure.words);
            found.back().cure = std::move(cure.changes);
        }
    }
}

}  // namespace

const Rule key_outline{
    .name = "key-outline",
    .sentence = "The fill or the edge of a key has a contrast of 3:1 against what is behind it.",
    .computed =
        "The better contrast ratio of fill and edge of an idle key against what lies behind it, in "
        "the palette in which that is least.",
    .formula = "max(contrast of fill, contrast of edge), as for text-contrast",
    .sources = key_outline_sources,
    .figures = key_outline_figures,
    .find = find_key_outline,
};

}  // namespace dialplate::rule

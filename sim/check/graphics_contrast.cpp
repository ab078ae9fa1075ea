// graphics-contrast: bars, ticks, pointers and pictures, which say something without words, stand out
// from their ground in every palette.
#include "sim/check/page_colours.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <set>
#include <utility>

namespace dialplate::rule {

namespace {

constexpr RuleSource graphics_contrast_sources[] = {
    {"WCAG 2.2 SC 1.4.11 (CON-05)", Trust::read},
};

constexpr RuleFigure graphics_contrast_figures[] = {
    {"least", ":1", "least contrast of graphics", 3.0, 1.0, 21.0},
};

void find_graphics_contrast(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::graphics_contrast, "least");
    const PaintCures cures(layout);
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            std::set<std::pair<PaintId, PaintId>> judged;
            for (const ShownMark& mark : marks_of(item)) {
                if (!judged.insert({mark.ink, mark.ground}).second) continue;
                const LeastContrast least = least_contrast(layout, mark.ink, mark.ground);
                if (least.ratio >= needed) continue;
                const std::string message = called(item) + ": " + mark.part + ", " +
                                            painted(layout, mark.ink, least.palette) + " on " +
                                            painted(layout, mark.ground, least.palette) +
                                            in_palette(layout, least.palette) + ", has contrast " +
                                            number(least.ratio, 2) + ":1, graphics need " +
                                            number(needed, 1) + ":1";
                PaintCure cure =
                    cures.cure_of_contrast("ink", mark.ink, mark.ground, least.palette, needed);
                add_finding(found,
                            Severity::must,
                            item.pointer,
                            {least.ratio, needed, ":1"},
                            message + cure.words);
                found.back().cure = std::move(cure.changes);
            }
        }
    }
}

}  // namespace

const Rule graphics_contrast{
    .name = "graphics-contrast",
    .sentence = "Bars, ticks, pointers and pictures have a contrast of 3:1 in every palette.",
    .computed =
        "Contrast ratio of a bar, a tick, a pointer or a picture against its ground, as the "
        "display holds them, in the palette in which it is least.",
    .formula = "(L1 + 0.05) / (L2 + 0.05), as for text-contrast",
    .sources = graphics_contrast_sources,
    .figures = graphics_contrast_figures,
    .find = find_graphics_contrast,
};

}  // namespace dialplate::rule

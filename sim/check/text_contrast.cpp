// text-contrast: words and digits stand out from their ground, in every palette, on the colours that the
// display holds.
#include "sim/check/large_text.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <set>
#include <utility>

namespace dialplate::rule {

namespace {

constexpr RuleSource text_contrast_sources[] = {
    {"WCAG 2.2 SC 1.4.3 (CON-05)", Trust::read},
    {"WCAG 2.2, \"contrast ratio\" and \"relative luminance\" (CON-01, CON-03, CON-04)",
     Trust::read},
    {"WCAG 2.2, \"large scale\" (CON-06)", Trust::read},
};

constexpr RuleFigure text_contrast_figures[] = {
    {"least", ":1", "least contrast of text", 4.5, 1.0, 21.0},
    {"least_large", ":1", "least contrast of large text", 3.0, 1.0, 21.0},
};

void find_text_contrast(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double least_of_text = figure(layout, rule::text_contrast, "least");
    const double least_of_large = figure(layout, rule::text_contrast, "least_large");
    const PaintCures cures(layout);
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            std::set<std::pair<PaintId, PaintId>> judged;
            for (const ShownText& text : texts_of(item, layout)) {
                if (!judged.insert({text.ink, text.ground}).second) continue;
                const bool large = is_large_text(layout, text.face);
                const double needed = large ? least_of_large : least_of_text;
                const LeastContrast least = least_contrast(layout, text.ink, text.ground);
                if (least.ratio >= needed) continue;
                const std::string message =
                    called(item) + ": " + text.part + ", " +
                    painted(layout, text.ink, least.palette) + " on " +
                    painted(layout, text.ground, least.palette) +
                    in_palette(layout, least.palette) + ", has contrast " + number(least.ratio, 2) +
                    ":1, " + (large ? "large text" : "text") + " needs " + number(needed, 1) + ":1";
                PaintCure cure =
                    cures.cure_of_contrast("ink", text.ink, text.ground, least.palette, needed);
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

const Rule text_contrast{
    .name = "text-contrast",
    .sentence = "Text has a contrast of 4.5:1, large text of 3:1, in every palette.",
    .computed =
        "Contrast ratio of ink and ground as the display holds them (RGB565), in the palette in "
        "which it is least. Large is an em of 18 pt, or 14 pt bold. The response of the panel is "
        "taken to be that of sRGB.",
    .formula =
        "(L1 + 0.05) / (L2 + 0.05), L = 0.2126 R + 0.7152 G + 0.0722 B, linear, L1 the lighter one",
    .sources = text_contrast_sources,
    .figures = text_contrast_figures,
    .find = find_text_contrast,
};

}  // namespace dialplate::rule

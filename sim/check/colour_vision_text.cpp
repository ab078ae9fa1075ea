// colour-vision-text: text that stands out for most eyes stands out for those that lack one kind of cone.
#include "sim/check/large_text.hpp"
#include "sim/check/lit_texts.hpp"
#include "sim/check/nearest_ink.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource colour_vision_text_sources[] = {
    {"Machado, Oliveira, Fernandes 2009, on linear RGB (CVD-01 to CVD-06), held to WCAG 2.2 SC "
     "1.4.3 (CON-05)",
     Trust::second_hand},
};

constexpr RuleFigure colour_vision_text_figures[] = {
    {"least", ":1", "least contrast of text as each eye sees it", 4.5, 1.0, 21.0},
    {"least_large", ":1", "least contrast of large text as each eye sees it", 3.0, 1.0, 21.0},
};

/// The eye and the palette in which two colours are least apart.
struct LeastContrast {
    double ratio = 22.0;
    Vision vision = Vision::protan;
    std::size_t palette = 0;
};

double contrast_seen(Vision vision, std::uint16_t ink, std::uint16_t ground) {
    const auto luminance = [&](std::uint16_t colour) {
        return relative_luminance(seen_with(vision, light_of(expand_rgb565(colour))));
    };
    return contrast_ratio(luminance(ink), luminance(ground));
}

/// Only what passes without a missing cone counts: the rest is for text-contrast to say.
std::optional<LeastContrast> least_of(const Layout& layout, const ShownText& text, double needed) {
    std::optional<LeastContrast> least;
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    for (std::size_t palette = 0; palette < palettes; ++palette) {
        const std::uint16_t ink = colour_in(layout, text.ink, palette);
        const std::uint16_t ground = colour_in(layout, text.ground, palette);
        if (contrast_on_glass(ink, ground) < needed) continue;
        for (const Vision vision : all_visions) {
            const double ratio = contrast_seen(vision, ink, ground);
            // The model is weak for tritan: it counts only where the others pass.
            const bool sure = vision != Vision::tritan;
            if (ratio >= needed || (least && (!sure || ratio >= least->ratio))) continue;
            least = {.ratio = ratio, .vision = vision, .palette = palette};
        }
    }
    return least;
}

void find_colour_vision_text(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const PaintCures cures(layout);
    for (const LitText& each : texts_in(layout)) {
        const bool large = is_large_text(layout, each.text.face);
        const double needed =
            figure(layout, rule::colour_vision_text, large ? "least_large" : "least");
        const std::optional<LeastContrast> least = least_of(layout, each.text, needed);
        if (!least) continue;
        const std::string message =
            called(*each.item) + ": " + each.text.part + ", " +
            painted(layout, each.text.ink, least->palette) + " on " +
            painted(layout, each.text.ground, least->palette) + in_palette(layout, least->palette) +
            ", has contrast " + number(least->ratio, 2) + ":1 for " + name_of(least->vision) +
            " eyes, " + (large ? "large text" : "text") + " needs " + number(needed, 1) + ":1";
        const auto ink =
            ink_that_reaches({.ink = colour_in(layout, each.text.ink, least->palette),
                              .ground = colour_in(layout, each.text.ground, least->palette),
                              .ratio = needed,
                              .vision = least->vision});
        const Vision vision = least->vision;
        PaintCure cure = cures.cure({.paint = each.text.ink,
                                     .against = each.text.ground,
                                     .palette = least->palette,
                                     .colour = ink,
                                     .needed = needed,
                                     .ratio = [vision](std::uint16_t one, std::uint16_t other) {
                                         return std::min(contrast_on_glass(one, other),
                                                         contrast_seen(vision, one, other));
                                     }});
        add_finding(found,
                    vision == Vision::tritan ? Severity::note : Severity::should,
                    each.item->pointer,
                    {least->ratio, needed, ":1"},
                    message + cure.words);
        found.back().cure = std::move(cure.changes);
    }
}

}  // namespace

const Rule colour_vision_text{
    .name = "colour-vision-text",
    .sentence =
        "Text keeps a contrast of 4.5:1, large text of 3:1, for protan, deutan and tritan eyes.",
    .computed =
        "Contrast ratio of ink and ground, as the display holds them and as an eye sees them that "
        "lacks one kind "
        "of cone, in the palette in which it is least. For tritan the model is an indication only: "
        "a note.",
    .formula = "matrix of Machado et al. on linear RGB, clamped to 0..1; then as for text-contrast",
    .sources = colour_vision_text_sources,
    .figures = colour_vision_text_figures,
    .find = find_colour_vision_text,
};

}  // namespace dialplate::rule

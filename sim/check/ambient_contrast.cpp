// ambient-contrast: text stands out in the light of the room, which the glass throws back.
//
// A figure of its own beside text-contrast: that one takes 5 % of white for reflected light whatever the
// room is like (CON-15).
#include "sim/check/lit_texts.hpp"
#include "sim/check/nearest_ink.hpp"
#include "sim/check/paint_cures.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace dialplate::rule {

namespace {

constexpr RuleSource ambient_contrast_sources[] = {
    {"NUREG-0700 Rev. 3 (2020): 6:1 with ambient light, prefer 10:1 (CON-07)", Trust::read},
    {"NUREG-0700 Rev. 3 (2020): dark on light above 540 lx (CON-07)", Trust::read},
    {"photometry: (Lw + Lr) / (Lb + Lr), Lr = E * reflectance / pi (CON-12, CON-13)",
     Trust::derived},
    {"reflectance 0.04 where the display's part has none: one surface of bare glass",
     Trust::memory},
};

constexpr RuleFigure ambient_contrast_figures[] = {
    {"least", ":1", "least contrast of text in the light of the room", 6.0, 1.0, 100.0},
    {"preferred", ":1", "preferred contrast of text in the light of the room", 10.0, 1.0, 100.0},
    {"dark_ink_lux",
     "lx",
     "light from which dark ink on a light ground is advised",
     540.0,
     1.0,
     200000.0},
};

/// Whether most texts of a palette are darker than their ground.
bool dark_on_light(const Layout& layout,
                   const GlassLight& light,
                   const std::vector<LitText>& texts,
                   std::size_t palette) {
    const auto dark = std::count_if(texts.begin(), texts.end(), [&](const LitText& each) {
        const InkAndGround seen = luminances(layout, light, each.text, palette);
        return seen.ink < seen.ground;
    });
    return 2 * static_cast<std::size_t>(dark) > texts.size();
}

void find_ambient_contrast(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double least = figure(layout, rule::ambient_contrast, "least");
    const double preferred = std::max(least, figure(layout, rule::ambient_contrast, "preferred"));
    const double bright = figure(layout, rule::ambient_contrast, "dark_ink_lux");
    const GlassLight light = glass_light(layout, layout.viewing.light);
    const std::vector<LitText> texts = texts_in(layout);
    if (texts.empty()) return;
    const std::size_t palette = palette_for_light(layout, light, texts);
    const PaintCures cures(layout);
    const std::string room = " at " + number(layout.viewing.light.value) + " lx";

    // What is preferred is said once for each pair of colours, what is needed at every item.
    std::set<std::tuple<const Item*, PaintId, PaintId>> judged;
    for (const LitText& each : texts) {
        const InkAndGround seen = luminances(layout, light, each.text, palette);
        const double ratio = luminance_ratio(seen.ink, seen.ground);
        if (ratio >= preferred) continue;
        const bool faint = ratio < least;
        const Item* const place = faint ? each.item : nullptr;
        if (!judged.insert({place, each.text.ink, each.text.ground}).second) continue;
        const double wanted = faint ? least : preferred;
        const auto ink =
            nearest_ink(colour_in(layout, each.text.ink, palette), [&](std::uint32_t shown) {
                const double luminance = light.of(relative_luminance(shown));
                return luminance_ratio(luminance, seen.ground) >= wanted;
            });
        PaintCure cure = cures.cure({.paint = each.text.ink,
                                     .against = each.text.ground,
                                     .palette = palette,
                                     .colour = ink,
                                     .needed = wanted,
                                     .decimals = 1,
                                     .ratio = [&light](std::uint16_t one, std::uint16_t other) {
                                         return luminance_ratio(
                                             light.of(relative_luminance(expand_rgb565(one))),
                                             light.of(relative_luminance(expand_rgb565(other))));
                                     }});
        add_finding(found,
                    faint ? Severity::should : Severity::note,
                    each.item->pointer,
                    {ratio, wanted, ":1"},
                    called(*each.item) + ": " + each.text.part + ", " +
                        painted(layout, each.text.ink, palette) + " on " +
                        painted(layout, each.text.ground, palette) + in_palette(layout, palette) +
                        ", has contrast " + number(ratio, 1) + ":1" + room + ", " +
                        (faint ? "needed is " : "preferred is ") + number(wanted, 1) + ":1" +
                        cure.words);
        found.back().cure = std::move(cure.changes);
    }

    if (layout.viewing.light.value <= bright) return;
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    for (std::size_t each = 0; each < palettes; ++each)
        if (dark_on_light(layout, light, texts, each)) return;
    add_finding(found,
                Severity::note,
                "/viewing/light_lux",
                {layout.viewing.light.value, bright, "lx"},
                "the glass is read" + room + ", dark ink on a light ground is advised above " +
                    number(bright) + " lx: add a palette that has it",
                ambient_contrast_sources[1].text);
}

}  // namespace

const Rule ambient_contrast{
    .name = "ambient-contrast",
    .sentence = "In the light of the room text has a contrast of 6:1, better 10:1.",
    .computed =
        "Luminances of ink and ground on the glass, with the light that the glass throws back in "
        "both. White "
        "and black are those of the display's part, the room is viewing.light_lux; of several "
        "palettes the "
        "one that suits this light best is judged.",
    .formula =
        "(L1 + E * reflectance / pi) / (L2 + E * reflectance / pi), L = black + (white - black) * "
        "Y",
    .sources = ambient_contrast_sources,
    .figures = ambient_contrast_figures,
    .find = find_ambient_contrast,
};

}  // namespace dialplate::rule

// modulation: the smaller the characters, the more light and dark have to differ.
#include "sim/check/lit_texts.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource modulation_sources[] = {
    {"NUREG-0700 Rev. 3 (2020): contrast modulation of small characters (CON-08)", Trust::read},
};

constexpr RuleFigure modulation_figures[] = {
    {"most_arcmin", "'", "height up to which characters are small", 17.0, 10.0, 60.0},
};

constexpr double smallest_arcmin = 10.0;  // CON-08: below, no modulation is enough

std::optional<int> capital_of(const BuiltImage& image, FaceId face) {
    for (const FaceMeasure& measure : image.measures)
        if (measure.face == face) return measure.capital;
    return std::nullopt;
}

void find_modulation(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Millimetres pitch = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    if (pitch.value <= 0.0) return;  // seen edge on
    const double most = figure(layout, rule::modulation, "most_arcmin");
    const GlassLight light = glass_light(layout, layout.viewing.light);
    const std::vector<LitText> texts = texts_in(layout);
    const std::size_t palette = palette_for_light(layout, light, texts);
    for (const LitText& each : texts) {
        const std::optional<int> capital = capital_of(subject.image, each.text.face);
        if (!capital || *capital <= 0) continue;
        const double angle =
            visual_angle({.height = pitch * *capital, .distance = layout.viewing.distance}).value;
        if (angle < smallest_arcmin || angle > most) continue;  // character-height speaks below
        const double needed = 0.3 + 0.07 * (20.0 - angle);
        const InkAndGround seen = luminances(layout, light, each.text, palette);
        const double high = std::max(seen.ink, seen.ground), low = std::min(seen.ink, seen.ground);
        const double modulation = (high - low) / (high + low);
        if (modulation >= needed) continue;
        add_finding(found,
                    Severity::should,
                    each.item->pointer,
                    {modulation, needed, ""},
                    called(*each.item) + ": " + each.text.part + ", " +
                        painted(layout, each.text.ink, palette) + " on " +
                        painted(layout, each.text.ground, palette) + in_palette(layout, palette) +
                        ", has a modulation of " + number(modulation, 2) + " (contrast " +
                        number(high / low, 1) + ":1 at " + number(layout.viewing.light.value) +
                        " lx), characters of " + number(angle, 1) + "' need " + number(needed, 2) +
                        ": a contrast of " + number((1.0 + needed) / (1.0 - needed), 1) +
                        ":1 or larger characters reach it");
    }
}

}  // namespace

const Rule modulation{
    .name = "modulation",
    .sentence = "Characters of 10' to 17' have the more modulation the smaller they are.",
    .computed =
        "Modulation of a text's luminances, the light of the room in both, as ambient-contrast has "
        "them; S is "
        "the height of capitals at the eye in minutes of arc.",
    .formula = "(Lmax - Lmin) / (Lmax + Lmin) >= 0.3 + 0.07 * (20 - S)",
    .sources = modulation_sources,
    .figures = modulation_figures,
    .find = find_modulation,
};

}  // namespace dialplate::rule

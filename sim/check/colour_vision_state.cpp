// colour-vision-state: what colour alone says can be told by eyes that lack one kind of cone: whether a lamp
// is lit, a key active, a meter beyond its limit.
#include "sim/check/nearest_ink.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/two_states.hpp"
#include "sim/check/wording.hpp"
#include "sim/colour/colour_space.hpp"
#include "sim/colour/vision.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource colour_vision_state_sources[] = {
    {"common practice, no source: a difference of 20 is seen without comparing", Trust::practice},
    {"Sharma, Wu, Dalal 2005: CIEDE2000 (CVD-07)", Trust::second_hand},
    {"Machado, Oliveira, Fernandes 2009, on linear RGB (CVD-01 to CVD-06)", Trust::second_hand},
};

constexpr RuleFigure colour_vision_state_figures[] = {
    {"least", "", "least colour difference between the two states (CIEDE2000)", 20.0, 1.0, 100.0},
};

/// Colours that say different things, and whether something else says it as well.
struct Meaning {
    TwoStates states;
    bool by_colour_alone = true;
};

std::optional<Meaning> meaning_of(const Item& item, const Layout& layout) {
    if (item.kind == ItemKind::meter) {
        const Meter& meter = item.meter;
        if (meter.over_from > meter.to) return std::nullopt;
        // The place on the bar says it, too.
        return Meaning{.states = {.on = {.ink = meter.over, .fill = meter.over, .edge = meter.over},
                                  .off = {.ink = meter.ink, .fill = meter.ink, .edge = meter.ink},
                                  .words = "its bar below and above the limit"},
                       .by_colour_alone = false};
    }
    if (const auto states = states_of(item, layout)) return Meaning{.states = *states};
    return std::nullopt;
}

double apart_for(Vision vision, std::uint16_t one, std::uint16_t other) {
    const auto seen = [&](std::uint16_t colour) {
        return lab(seen_with(vision, light_of(expand_rgb565(colour))));
    };
    return ciede2000(seen(one), seen(other));
}

struct LeastDifference {
    double difference = 1000.0;
    Vision vision = Vision::protan;
    std::size_t palette = 0;
};

/// The best of fill, ink and edge, in the palette in which that is least.
LeastDifference least_for(const Layout& layout, const TwoStates& states, Vision vision) {
    LeastDifference least{.vision = vision};
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    for (std::size_t palette = 0; palette < palettes; ++palette) {
        const auto apart = [&](PaintId a, PaintId b) {
            return apart_for(vision, colour_in(layout, a, palette), colour_in(layout, b, palette));
        };
        double best = apart(states.on.fill, states.off.fill);
        if (states.has_text) best = std::max(best, apart(states.on.ink, states.off.ink));
        if (states.has_edge) best = std::max(best, apart(states.on.edge, states.off.edge));
        if (best < least.difference)
            least = {.difference = best, .vision = vision, .palette = palette};
    }
    return least;
}

void find_colour_vision_state(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::colour_vision_state, "least");
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            const std::optional<Meaning> meaning = meaning_of(item, layout);
            if (!meaning) continue;
            std::optional<LeastDifference> worst;
            for (const Vision vision : all_visions) {
                const LeastDifference least = least_for(layout, meaning->states, vision);
                // The model is weak for tritan: it counts only where the others pass.
                if (least.difference >= needed || (worst && vision == Vision::tritan)) continue;
                if (!worst || least.difference < worst->difference) worst = least;
            }
            if (!worst) continue;
            // The state that is lit, or beyond the limit: lighter or darker until every eye that counts tells it.
            const PaintId on = meaning->states.on.fill, off = meaning->states.off.fill;
            const auto enough = [&](std::uint16_t one, std::uint16_t other) {
                double least = 1000.0;
                for (const Vision vision : all_visions)
                    if (vision != Vision::tritan || vision == worst->vision)
                        least = std::min(least, apart_for(vision, one, other));
                return least;
            };
            const std::uint16_t beside = colour_in(layout, off, worst->palette);
            const auto colour = nearest_ink(
                colour_in(layout, on, worst->palette),
                [&](std::uint32_t shown) { return enough(pack_rgb565(shown), beside) >= needed; });
            const std::string lighter = colour ? ", " + hex_colour(*colour) + " for " +
                                                     painted(layout, on, worst->palette) +
                                                     " reaches it"
                                               : std::string();
            const bool sure = worst->vision != Vision::tritan && meaning->by_colour_alone;
            add_finding(found,
                        sure ? Severity::should : Severity::note,
                        item.pointer,
                        {worst->difference, needed, ""},
                        called(item) + ": " + meaning->states.words + " differ by " +
                            number(worst->difference, 1) + " (CIEDE2000) for " +
                            name_of(worst->vision) + " eyes" + in_palette(layout, worst->palette) +
                            ", needed are " + number(needed) +
                            ": make one of them much lighter or darker" + lighter +
                            ", or say it in words or by shape");
        }
    }
}

}  // namespace

const Rule colour_vision_state{
    .name = "colour-vision-state",
    .sentence =
        "Lit and unlit, active and idle, below and above the limit differ for eyes that lack one "
        "kind of cone.",
    .computed =
        "Colour difference between the two states of a lamp, a key or a meter's bar as each eye "
        "sees them, the best "
        "of fill, ink and edge, in the palette in which it is least. A note for tritan, where the "
        "model is an "
        "indication only, and for meters, whose bar says it by its length as well.",
    .formula =
        "CIEDE2000 of the two colours, each through the matrix of Machado et al. on linear RGB",
    .sources = colour_vision_state_sources,
    .figures = colour_vision_state_figures,
    .find = find_colour_vision_state,
};

}  // namespace dialplate::rule

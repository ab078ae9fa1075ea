// graphics-contrast: bars, ticks, pointers and pictures, which say something without words, stand out
// from their ground in every palette.
#include "sim/check/nearest_ink.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <set>
#include <utility>

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"WCAG 2.2 SC 1.4.11 (CON-05)", Trust::read},
};

constexpr RuleFigure figures[] = {
    {"least", ":1", "least contrast of graphics", 3.0, 1.0, 21.0},
};

struct Mark {
    const char* part = "";
    PaintId ink = 0;
    PaintId ground = 0;
};

std::vector<Mark> marks_of(const Item& item) {
    switch (item.kind) {
        case ItemKind::meter: {
            const Meter& m = item.meter;
            std::vector<Mark> marks{{"its bar", m.ink, m.unlit}};
            if (m.over_from <= m.to) marks.push_back({"its bar above the limit", m.over, m.unlit});
            if (m.peak) marks.push_back({"its peak", m.peak_ink, m.unlit});
            if (!m.marks.empty() && m.tick > 0)
                marks.push_back({"its ticks", m.mark_ink, m.ground});
            return marks;
        }
        case ItemKind::scale:
            return {{"its ticks", item.scale.ink, item.scale.ground},
                    {"its pointer", item.scale.pointer_ink, item.scale.ground}};
        case ItemKind::picture:
            return {{"its shape", item.picture.ink, item.picture.ground}};
        default:
            return {};
    }
}

void find(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double needed = figure(layout, rule::graphics_contrast, "least");
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            std::set<std::pair<PaintId, PaintId>> judged;
            for (const Mark& mark : marks_of(item)) {
                if (!judged.insert({mark.ink, mark.ground}).second) continue;
                const LeastContrast least = least_contrast(layout, mark.ink, mark.ground);
                if (least.ratio >= needed) continue;
                std::string message = called(item) + ": " + mark.part + ", " +
                                      painted(layout, mark.ink, least.palette) + " on " +
                                      painted(layout, mark.ground, least.palette) +
                                      in_palette(layout, least.palette) + ", has contrast " +
                                      number(least.ratio, 2) + ":1, graphics need " +
                                      number(needed, 1) + ":1";
                const auto ink =
                    ink_that_reaches({.ink = colour_in(layout, mark.ink, least.palette),
                                      .ground = colour_in(layout, mark.ground, least.palette),
                                      .ratio = needed});
                if (ink) message += ": ink " + hex_colour(*ink) + " reaches it";
                add_finding(found,
                            Severity::must,
                            item.pointer,
                            {least.ratio, needed, ":1"},
                            std::move(message));
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
    .sources = sources,
    .figures = figures,
    .find = find,
};

}  // namespace dialplate::rule

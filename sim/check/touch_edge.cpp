// touch-edge: a key does not lie in the edge of a resistive sheet alone.
#include "sim/check/key_targets.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_edge_sources[] = {
    {"resistive sheets are hard to press within 2 to 3 mm of their edge (RES-14)", Trust::memory},
    {"WCAG 2.2 SC 2.5.8: 24 CSS pixels (TCH-02)", Trust::read},
};

constexpr RuleFigure touch_edge_figures[] = {
    {"edge_mm", "mm", "width of the edge in which a press may fail", 2.0, 0.0, 10.0},
    {"least_mm", "mm", "least width and height of a key inside that edge", 6.35, 0.0, 50.0},
};

/// What of a target lies inside the edge of a sheet that is as large as the glass.
Target inside(const Target& key, const Layout& layout, Millimetres edge) {
    const Millimetres width = layout.pitch_x() * layout.glass_width();
    const Millimetres height = layout.pitch_y() * layout.glass_height();
    return {.left = std::max(key.left, edge),
            .top = std::max(key.top, edge),
            .right = std::min(key.right, width - edge),
            .bottom = std::min(key.bottom, height - edge)};
}

void find_touch_edge(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Millimetres edge{figure(layout, rule::touch_edge, "edge_mm")};
    const double least = figure(layout, rule::touch_edge, "least_mm");
    for (const Page& page : layout.pages) {
        for (const KeyTarget& key : targets_of(page, layout)) {
            const Target left_over = inside(key.target, layout, edge);
            const double narrowest = std::max(0.0, left_over.narrowest().value);
            // A key that is small anyway is another rule's business.
            const bool by_edge = narrowest < key.target.narrowest().value - length_slack;
            if (!by_edge || narrowest >= least - length_slack) continue;
            add_finding(found,
                        Severity::note,
                        key.item->pointer,
                        {narrowest, least, "mm"},
                        called(*key.item) + " keeps " + number(narrowest, 2) +
                            " mm outside the edge of the touch sheet, where a press may fail, "
                            "advised are " +
                            number(least, 2) + " mm: move it " + number(least - narrowest, 1) +
                            " mm inwards or make it larger");
        }
    }
}

}  // namespace

const Rule touch_edge{
    .name = "touch-edge",
    .sentence = "A key keeps 6.35 mm both ways outside the outermost 2 mm of the touch sheet.",
    .computed =
        "Width and height of what remains of a key when the outermost millimetres of the active "
        "area "
        "are taken away, where the two layers of a resistive sheet are held apart by its rim.",
    .formula = "min(width, height) of the key inside the edge >= least",
    .sources = touch_edge_sources,
    .figures = touch_edge_figures,
    .find = find_touch_edge,
};

}  // namespace dialplate::rule

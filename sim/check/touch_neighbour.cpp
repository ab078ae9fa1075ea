// touch-neighbour: a finger that aims at the middle of a key does not press another one.
#include "sim/check/rule_list.hpp"
#include "sim/check/tap_odds.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_neighbour_sources[] = {
    {"integral of a bivariate normal over the other keys (TCH-25)", Trust::derived},
    {"scatter of 1.5 mm (TCH-22)", Trust::memory},
    {"1 of 100 taps: common practice, no source", Trust::practice},
};

constexpr RuleFigure touch_neighbour_figures[] = {
    {"most_percent", "%", "share of the taps that may land on another key", 1.0, 0.0, 100.0},
};

void find_touch_neighbour(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double most = figure(layout, rule::touch_neighbour, "most_percent");
    for (const Page& page : layout.pages) {
        const std::vector<KeyTarget> keys = targets_of(page, layout);
        const std::vector<TapOdds> odds = tap_odds(keys, layout.touch.scatter);
        for (std::size_t i = 0; i < keys.size(); ++i) {
            const double percent = 100.0 * odds[i].neighbour;
            if (percent <= most) continue;
            add_finding(found,
                        Severity::should,
                        keys[i].item->pointer,
                        {percent, most, "%"},
                        "of the taps aimed at " + called(*keys[i].item) + ", " +
                            number(percent, 1) + " % land on other keys (" +
                            number(100.0 * odds[i].on_likeliest, 1) + " % on " +
                            called(*odds[i].likeliest) + "), allowed are " + number(most, 1) +
                            " %: make it larger or move that one away");
        }
    }
}

}  // namespace

const Rule touch_neighbour{
    .name = "touch-neighbour",
    .sentence = "Of the taps aimed at the middle of a key, at most 1 % land on another key.",
    .computed =
        "The share of taps that land on any other key of the page when they are aimed at the "
        "middle "
        "of one, and scatter as in touch-hit. Left, right, top and bottom are another key's edges, "
        "from that middle; F is the normal distribution.",
    .formula =
        "sum over the other keys of (F(right / s) - F(left / s)) * (F(bottom / s) - F(top / s))",
    .sources = touch_neighbour_sources,
    .figures = touch_neighbour_figures,
    .find = find_touch_neighbour,
};

}  // namespace dialplate::rule

// touch-hit: a finger that aims at the middle of a key hits it.
#include "sim/check/rule_list.hpp"
#include "sim/check/tap_odds.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_hit_sources[] = {
    {"integral of a bivariate normal over the key (TCH-24)", Trust::derived},
    {"Bi, Li, Zhai, CHI 2013: taps scatter about the aim (TCH-20)", Trust::read},
    {"scatter of 1.5 mm (TCH-22)", Trust::memory},
    {"95 of 100 taps: common practice, no source", Trust::practice},
};

constexpr RuleFigure touch_hit_figures[] = {
    {"least_percent", "%", "share of the taps that are to hit their key", 95.0, 0.0, 100.0},
};

void find_touch_hit(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double least = figure(layout, rule::touch_hit, "least_percent");
    for (const Page& page : layout.pages) {
        const std::vector<KeyTarget> keys = targets_of(page, layout);
        const std::vector<TapOdds> odds = tap_odds(keys, layout.touch.scatter);
        for (std::size_t i = 0; i < keys.size(); ++i) {
            const double percent = 100.0 * odds[i].hit;
            if (percent >= least) continue;
            const Millimetres side = side_for_hits(least / 100.0, layout.touch.scatter);
            add_finding(found,
                        Severity::should,
                        keys[i].item->pointer,
                        {percent, least, "%"},
                        called(*keys[i].item) + " is hit by " + number(percent, 1) +
                            " % of the taps aimed at its middle, needed are " + number(least, 1) +
                            " %: " + number(side.value, 1) + " mm both ways (" +
                            std::to_string(pixels_over(side, layout.pitch_x())) + " x " +
                            std::to_string(pixels_over(side, layout.pitch_y())) + " px) reach it");
        }
    }
}

}  // namespace

const Rule touch_hit{
    .name = "touch-hit",
    .sentence = "Of the taps aimed at the middle of a key, 95 % hit it.",
    .computed =
        "The share of taps that land on a key when they are aimed at its middle and scatter about "
        "it "
        "as a bivariate normal, with a standard deviation each way of s (`touch.scatter_mm` of the "
        "layout, 1.5 when left out: there is no agreed value, measure your own). w and h are the "
        "key's width and height.",
    .formula = "erf(w / (2 sqrt(2) s)) * erf(h / (2 sqrt(2) s))",
    .sources = touch_hit_sources,
    .figures = touch_hit_figures,
    .find = find_touch_hit,
};

}  // namespace dialplate::rule

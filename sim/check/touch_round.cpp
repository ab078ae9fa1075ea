// touch-round: whoever taps each key of a page once gets through without a miss.
#include "sim/check/rule_list.hpp"
#include "sim/check/tap_odds.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource touch_round_sources[] = {
    {"product of the hits of all keys (TCH-24)", Trust::derived},
    {"scatter of 1.5 mm (TCH-22)", Trust::memory},
    {"1 of 10 rounds: common practice, no source", Trust::practice},
};

constexpr RuleFigure touch_round_figures[] = {
    {"most_percent", "%", "share of the rounds in which a tap may go wrong", 10.0, 0.0, 100.0},
};

void find_touch_round(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double most = figure(layout, rule::touch_round, "most_percent");
    for (const Page& page : layout.pages) {
        const std::vector<KeyTarget> keys = targets_of(page, layout);
        const std::vector<TapOdds> odds = tap_odds(keys, layout.touch.scatter);
        const double percent = 100.0 * round_goes_wrong(odds);
        if (percent <= most) continue;
        const auto worst =
            std::min_element(odds.begin(), odds.end(), [](const TapOdds& a, const TapOdds& b) {
                return a.hit < b.hit;
            });
        const auto at = static_cast<std::size_t>(worst - odds.begin());
        add_finding(found,
                    Severity::note,
                    page.pointer,
                    {percent, most, "%"},
                    "page \"" + page.name + "\": whoever taps each of its " +
                        counted(static_cast<long long>(keys.size()), "key", "keys") +
                        " once misses at least one in " + number(percent, 1) +
                        " % of the rounds, allowed are " + number(most, 1) + " %: begin with " +
                        called(*keys[at].item) + ", which " + number(100.0 * worst->hit, 1) +
                        " % hit");
    }
}

}  // namespace

const Rule touch_round{
    .name = "touch-round",
    .sentence =
        "Whoever taps each key of a page once misses one of them in at most 10 % of the rounds.",
    .computed =
        "The chance that at least one tap misses when every key of a page is tapped once, each "
        "aimed "
        "at its middle, scattered as in touch-hit and independent of the others. p is the share of "
        "hits of a key.",
    .formula = "1 - p1 * p2 * ... * pn",
    .sources = touch_round_sources,
    .figures = touch_round_figures,
    .find = find_touch_round,
};

}  // namespace dialplate::rule

// acuity: an ordinary eye tells the characters apart that are most alike.
#include "sim/check/letterforms.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource acuity_sources[] = {
    {"idea of ISO 8596: decimal acuity is 1 over the detail in minutes of arc; 1' is 1.0",
     Trust::memory},
    {"common practice, no source: an eye of 0.5 should do", Trust::practice},
};

constexpr RuleFigure acuity_figures[] = {
    {"most", "", "greatest decimal acuity that may be needed", 1.0, 0.05, 3.0},
    {"advised_most", "", "greatest decimal acuity that should be needed", 0.5, 0.05, 3.0},
};

/// An angle that is meant: one a pair differs by, as the eye sees it.
ArcMinutes seen(double pixels, Millimetres pitch, Millimetres distance) {
    return visual_angle({.height = pitch * pixels, .distance = distance});
}

void find_acuity(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    // The direction in which pixels look smaller counts.
    const Millimetres pitch =
        std::min(layout.pitch_x(), foreshortened(layout.pitch_y(), layout.viewing.tilt));
    if (pitch.value <= 0.0) return;  // seen edge on
    const Millimetres distance = layout.viewing.distance;
    const double most = figure(layout, rule::acuity, "most");
    const double advised = figure(layout, rule::acuity, "advised_most");
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const auto pairs = hard_pairs(layout, subject.image, static_cast<FaceId>(i));
        // Two characters that do not differ at all are one shape on purpose: nothing to be seen.
        const auto hardest =
            std::find_if(pairs.begin(), pairs.end(), [](const GlyphDifference& each) {
                return each.detail > 0.0;
            });
        if (hardest == pairs.end()) continue;
        const double acuity = 1.0 / seen(hardest->detail, pitch, distance).value;
        if (acuity <= std::min(most, advised) + slack) continue;
        const bool over = acuity > most + slack;
        const double wanted = over ? most : advised;
        std::string others;
        for (auto pair = hardest + 1; pair < pairs.end(); ++pair)
            others += (others.empty() ? "; " : ", ") + pair->pair + " by " +
                      number(seen(pair->detail, pitch, distance).value, 1) + "'";
        const int needed =
            pixels_for({.angle = ArcMinutes{1.0 / wanted}, .distance = distance, .pitch = pitch})
                .value;
        add_finding(found,
                    over ? Severity::should : Severity::note,
                    layout.faces[i].pointer,
                    {acuity, wanted, ""},
                    called(layout.faces[i]) + ": " + hardest->pair + " differ by " +
                        number(hardest->detail) + " px, " + number(1.0 / acuity, 1) + "' at " +
                        number(distance.value) + " mm, which takes a decimal acuity of " +
                        number(acuity, 2) + ", " + (over ? "allowed" : "advised") + " is " +
                        number(wanted, 2) + ": " + number(needed) + " px would do" + others);
    }
}

}  // namespace

const Rule acuity{
    .name = "acuity",
    .sentence =
        "The characters that are most alike can be told apart by an eye of 1.0, better 0.5.",
    .computed =
        "For 0/8, 6/8, 3/8, 5/6, 1/7 and B/8, where a face has both: the greatest square of pixels "
        "that "
        "one has and the other has not, laid over each other where they differ least. Its side at "
        "the "
        "eye is the detail to be seen; the pair with the smallest counts.",
    .formula = "acuity = 1 / detail in minutes of arc",
    .sources = acuity_sources,
    .figures = acuity_figures,
    .find = find_acuity,
};

}  // namespace dialplate::rule

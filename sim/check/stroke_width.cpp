// stroke-width: the strokes of a face are neither hairlines nor so thick that they close its gaps.
#include "sim/check/letterforms.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/wording.hpp"

#include <cmath>

namespace dialplate::rule {

namespace {

constexpr RuleSource stroke_width_sources[] = {
    {"ISO 9241-3: 1/12 to 1/6 of the height, later parts 8 to 20 % (LEG-17)", Trust::memory},
    {"MIL-STD-1472: down to 1/10 for lit marks (LEG-16)", Trust::memory},
    {"DOD-HDBK-791(AM), 6-5.3.2.3: 1/7 to 1/8 light on dark, about 1/6 dark on light (LEG-15, "
     "LEG-16)",
     Trust::read},
};

constexpr RuleFigure stroke_width_figures[] = {
    {"least", "", "least stroke as part of the height", 1.0 / 12.0, 0.01, 0.5},
    {"advised_least", "", "advised stroke, at least", 1.0 / 10.0, 0.01, 0.5},
    {"advised_most", "", "advised stroke, at most", 0.2, 0.01, 0.5},
};

void find_stroke_width(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double least = figure(layout, rule::stroke_width, "least");
    const double advised_least = figure(layout, rule::stroke_width, "advised_least");
    const double advised_most = figure(layout, rule::stroke_width, "advised_most");
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const Face& face = layout.faces[i];
        const Letterforms forms = letterforms_of(layout, subject.image, static_cast<FaceId>(i));
        if (!forms.stroke || !forms.capital) continue;
        const double share = *forms.stroke / *forms.capital;
        const bool hair = share < least - slack, thin = share < advised_least - slack;
        if (!hair && !thin && share <= advised_most + slack) continue;
        const double wanted = hair ? least : thin ? advised_least : advised_most;
        const double pixels = wanted * *forms.capital;
        add_finding(found,
                    hair ? Severity::should : Severity::note,
                    face.pointer,
                    {share, wanted, ""},
                    called(face) + " has strokes of " + number(*forms.stroke) +
                        " px on capitals of " + number(*forms.capital) + " px, 1/" +
                        number(1.0 / share, 1) + " of the height; " +
                        (hair ? "needed is 1/" : "advised is 1/") + number(1.0 / wanted, 1) +
                        (thin ? " at least: " : " at most: ") +
                        number(thin ? std::ceil(pixels - slack) : std::floor(pixels + slack)) +
                        " px reach it",
                    hair   ? nullptr
                    : thin ? stroke_width_sources[1].text
                           : nullptr);
    }
}

}  // namespace

const Rule stroke_width{
    .name = "stroke-width",
    .sentence = "Strokes are a twelfth of the height or more, better a tenth to a fifth.",
    .computed =
        "Median run of ink in the rows of a face's letters and digits over the height of a "
        "capital, both "
        "as drawn.",
    .formula = "stroke / height",
    .sources = stroke_width_sources,
    .figures = stroke_width_figures,
    .find = find_stroke_width,
};

}  // namespace dialplate::rule

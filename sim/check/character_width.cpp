// character-width: capitals and digits are neither narrow nor wide for their height, as the eye sees them.
#include "sim/check/letterforms.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

#include <cmath>

namespace dialplate::rule {

namespace {

constexpr RuleSource character_width_sources[] = {
    {"ISO 9241-3 (1992), as quoted: 0.5 to 1.0 allowed, 0.7 to 0.9 recommended (LEG-13)",
     Trust::second_hand},
    {"DOD-HDBK-791(AM), 6-5.3.2.2: labels 3:5 to 1:1, I and 1 apart (LEG-14)", Trust::read},
    {"NUREG-0700 Rev. 2 (2002), 1.3.1-5: 0.7 to 0.9 (LEG-13)", Trust::read},
};

constexpr RuleFigure character_width_figures[] = {
    {"least", "", "least width of a character as part of its height", 0.5, 0.1, 2.0},
    {"most", "", "greatest width of a character as part of its height", 1.0, 0.1, 2.0},
    {"advised_least", "", "advised width, at least; NUREG-0700 has 0.7", 0.6, 0.1, 2.0},
    {"advised_most", "", "advised width, at most; NUREG-0700 has 0.9", 1.0, 0.1, 2.0},
};

void find_character_width(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Millimetres down = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    if (down.value <= 0.0) return;  // seen edge on
    const auto of_rule = [&](const char* name) {
        return figure(layout, rule::character_width, name);
    };
    const double least = of_rule("least"), most = of_rule("most");
    const double advised_least = of_rule("advised_least"), advised_most = of_rule("advised_most");
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const Face& face = layout.faces[i];
        const Letterforms forms = letterforms_of(layout, subject.image, static_cast<FaceId>(i));
        if (!forms.width || !forms.capital) continue;
        const double share = layout.pitch_x() * *forms.width / (down * *forms.capital);
        const bool allowed = share >= least - slack && share <= most + slack;
        const bool advised = share >= advised_least - slack && share <= advised_most + slack;
        if (allowed && advised) continue;
        const bool narrow = share < (allowed ? advised_least : least) - slack;
        const double wanted =
            narrow ? (allowed ? advised_least : least) : (allowed ? advised_most : most);
        const double pixels = wanted * (down * *forms.capital).value / layout.pitch_x().value;
        add_finding(found,
                    allowed ? Severity::note : Severity::should,
                    face.pointer,
                    {share, wanted, ""},
                    called(face) + " is " + number(share, 2) + " as wide as high (" +
                        number(*forms.width) + " x " + number(*forms.capital) + " px as drawn), " +
                        (allowed ? "advised" : "allowed") + " is " +
                        (narrow ? "at least " : "at most ") + number(wanted, 2) + ": " +
                        number(narrow ? std::ceil(pixels - slack) : std::floor(pixels + slack)) +
                        " px of width reach it",
                    allowed ? character_width_sources[1].text : nullptr);
    }
}

}  // namespace

const Rule character_width{
    .name = "character-width",
    .sentence = "Capitals and digits are half as wide as high to as wide as high, better from 0.6.",
    .computed =
        "Median width of the ink of a face's capitals and digits, without I and 1, over the height "
        "of "
        "a capital, both as drawn; the tilt of the line of sight shortens the height.",
    .formula = "width * pitch across / (height * pitch down * cos(tilt))",
    .sources = character_width_sources,
    .figures = character_width_figures,
    .find = find_character_width,
};

}  // namespace dialplate::rule

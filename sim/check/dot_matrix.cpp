// dot-matrix: a face has the dots that its characters need to look like themselves.
//
// Enlarging adds no dots: a face of 5 x 7 is one at every scale.
#include "sim/check/letterforms.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource dot_matrix_sources[] = {
    {"ISO 9241-3 (1992), as quoted: 5 x 7 for figures and capitals only, 7 x 9 else (LEG-20)",
     Trust::second_hand},
};

constexpr RuleFigure dot_matrix_figures[] = {
    {"least_across", "px", "least dots across for capitals and figures", 5.0, 1.0, 100.0},
    {"least_down", "px", "least dots down for capitals and figures", 7.0, 1.0, 100.0},
    {"small_letters_across",
     "px",
     "least dots across of a face with small letters",
     7.0,
     1.0,
     100.0},
    {"small_letters_down", "px", "least dots down of a face with small letters", 9.0, 1.0, 100.0},
};

void find_dot_matrix(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const auto of_rule = [&](const char* name) { return figure(layout, rule::dot_matrix, name); };
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const Face& face = layout.faces[i];
        if (face.kind == FaceKind::segment) continue;  // its figures have segments, not dots
        const Letterforms forms = letterforms_of(layout, subject.image, static_cast<FaceId>(i));
        if (!forms.width || !forms.capital) continue;
        const double across = *forms.width / face.scale, down = *forms.capital / face.scale;
        const bool small = forms.small_letters;
        const double least_across = of_rule(small ? "small_letters_across" : "least_across");
        const double least_down = of_rule(small ? "small_letters_down" : "least_down");
        if (across >= least_across && down >= least_down) continue;
        const bool by_height = down < least_down;
        add_finding(
            found,
            Severity::should,
            face.pointer,
            {by_height ? down : across, by_height ? least_down : least_across, "px"},
            called(face) + " has capitals of " + number(across) + " x " + number(down) + " dots, " +
                (small ? "a face with small letters needs " : "capitals and figures need ") +
                number(least_across) + " x " + number(least_down) +
                (small && across >= of_rule("least_across") && down >= of_rule("least_down")
                     ? ": write in capitals, or take a larger size"
                     : ": take a larger size"));
    }
}

}  // namespace

const Rule dot_matrix{
    .name = "dot-matrix",
    .sentence = "Capitals and figures have 5 x 7 dots, a face with small letters has 7 x 9.",
    .computed =
        "Median width and height of the ink of a face's capitals and figures, in dots "
        "of the face "
        "before "
        "it is enlarged.",
    .formula = "width / scale >= 5 and height / scale >= 7; with small letters 7 and 9",
    .sources = dot_matrix_sources,
    .figures = dot_matrix_figures,
    .find = find_dot_matrix,
};

}  // namespace dialplate::rule

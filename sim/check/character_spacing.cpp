// character-spacing: characters and words keep apart, and lines do.
//
// Digits of a read-out are held to the share of the height only: one stroke and one character's width are
// figures for labels.
#include "sim/check/letterforms.hpp"
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"NUREG-0700 Rev. 2 (2002): gap of 10 to 65 % of the height, 25 % in poor conditions (LEG-18)",
     Trust::read},
    {"NUREG-0700 Rev. 3 (2020), 11.4.1.5-7: one stroke between characters, one width between "
     "words, "
     "half a height between lines (LEG-19)",
     Trust::read},
};

constexpr RuleFigure figures[] = {
    {"least", "", "least gap between characters as part of the height", 0.10, 0.0, 1.0},
    {"most", "", "greatest gap between characters as part of the height", 0.65, 0.1, 2.0},
    {"least_poor",
     "",
     "least gap of characters that are small or seen from far off the normal",
     0.25,
     0.0,
     1.0},
    {"poor_arcmin", "'", "height below which conditions are poor", 15.0, 1.0, 120.0},
    {"poor_tilt_deg", "degrees", "tilt above which conditions are poor", 35.0, 0.0, 90.0},
};

constexpr double slack = 1e-9;  // rounding in the arithmetic

/// What the texts of a face are like, over all pages.
struct Use {
    bool labels = false;  ///< Words with letters.
    bool words = false;   ///< Several on a line.
};

bool has_letter(const std::string& text) {
    return std::any_of(text.begin(), text.end(), [](char c) {
        return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
    });
}

std::vector<Use> uses_of(const Subject& subject) {
    std::vector<Use> uses(subject.layout.faces.size());
    for (const TextExtent& text : subject.image.texts_shown) {
        Use& use = uses.at(static_cast<std::size_t>(text.face));
        use.labels = use.labels || has_letter(text.what);
        use.words = use.words || text.what.find(' ') != std::string::npos;
    }
    return uses;
}

/// What is asked of a gap and why.
struct Asked {
    double pixels = 0;
    const char* reason = "";
    const RuleSource* source = sources;
};

void judge_gap(const Subject& subject,
               const Face& face,
               const Letterforms& forms,
               const Use& use,
               std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const auto of_rule = [&](const char* name) {
        return figure(layout, rule::character_spacing, name);
    };
    const double height = *forms.capital, gap = *forms.gap;
    const Millimetres pitch = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    const bool small =
        pitch.value > 0.0 &&
        visual_angle({.height = pitch * height, .distance = layout.viewing.distance}).value <
            of_rule("poor_arcmin") - slack;
    const bool oblique = std::abs(layout.viewing.tilt.value) > of_rule("poor_tilt_deg");
    Asked asked{.pixels = of_rule("least") * height, .reason = "of the height"};
    if (small || oblique)
        asked = {.pixels = of_rule("least_poor") * height,
                 .reason = small ? "of the height, since it is small"
                                 : "of the height, since it is seen from far off the normal"};
    if (use.labels && forms.stroke && *forms.stroke > asked.pixels)
        asked = {.pixels = *forms.stroke, .reason = "one stroke", .source = &sources[1]};
    if (gap < asked.pixels - slack) {
        // Below the share that always holds it is a recommendation missed; the rest is worth knowing.
        const bool always = gap < of_rule("least") * height - slack;
        const std::string part =
            asked.source == sources ? number(100.0 * asked.pixels / height) + " % " : std::string();
        add_finding(found,
                    always ? Severity::should : Severity::note,
                    face.pointer,
                    {gap, asked.pixels, "px"},
                    called(face) + " has gaps of " + number(gap, gap == std::floor(gap) ? 0 : 1) +
                        " px between characters " + number(height) + " px high, advised is " +
                        part + asked.reason + ": " + number(std::ceil(asked.pixels - slack)) +
                        " px",
                    asked.source->text);
    } else if (gap > of_rule("most") * height + slack) {
        const double most = of_rule("most") * height;
        add_finding(found,
                    Severity::should,
                    face.pointer,
                    {gap, most, "px"},
                    called(face) + " has gaps of " + number(gap) + " px between characters " +
                        number(height) + " px high, allowed is " + number(100.0 * most / height) +
                        " % of the height: " + number(std::floor(most + slack)) + " px");
    }
}

void judge_words(const Face& face,
                 const Letterforms& forms,
                 const Use& use,
                 std::vector<Finding>& found) {
    if (!use.words || !forms.word_gap || !forms.width || *forms.word_gap >= *forms.width - slack)
        return;
    add_finding(found,
                Severity::note,
                face.pointer,
                {*forms.word_gap, *forms.width, "px"},
                called(face) + " has " + number(*forms.word_gap) +
                    " px between words, advised is the width of a character: " +
                    number(*forms.width) + " px",
                sources[1].text);
}

/// Rows from the foot of a line's capitals to the head of the next line's, as lines are set in an item;
/// none where it has one line.
std::optional<int> line_gap(const TextExtent& text, int lines, int cell, int capital) {
    if (lines < 2) return std::nullopt;
    return (text.height - cell) / (lines - 1) - capital;
}

const std::string* lines_of(const Item& item) {
    if (item.kind == ItemKind::legend) return &item.legend.text;
    if (item.kind == ItemKind::key) return &item.key.text;
    return nullptr;
}

/// One finding a face: the engine sets all lines of a face alike.
void judge_lines(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    std::vector<bool> judged(layout.faces.size(), false);
    for (const TextExtent& text : subject.image.texts_shown) {
        const auto id = static_cast<std::size_t>(text.face);
        if (judged.at(id)) continue;
        const Item& item = layout.pages.at(static_cast<std::size_t>(text.page))
                               .items.at(static_cast<std::size_t>(text.item));
        const std::string* const words = lines_of(item);
        if (words == nullptr) continue;
        const auto lines = 1 + static_cast<int>(std::count(words->begin(), words->end(), '\n'));
        const Letterforms forms = letterforms_of(layout, subject.image, text.face);
        int cell = 0;
        for (const FaceCost& cost : subject.image.faces)
            if (cost.face == text.face) cell = cost.height;
        if (!forms.capital || cell == 0) continue;
        const auto gap = line_gap(text, lines, cell, static_cast<int>(*forms.capital));
        if (!gap) continue;
        judged[id] = true;
        const double asked = *forms.capital / 2.0;
        if (*gap >= asked - slack) continue;
        add_finding(found,
                    Severity::note,
                    item.pointer,
                    {static_cast<double>(*gap), asked, "px"},
                    called(item) + " has lines " + std::to_string(*gap) + " px apart in " +
                        called(layout.faces[id]) + ", advised is half the height: " +
                        number(std::ceil(asked - slack)) + " px; legends of one line each reach it",
                    sources[1].text);
    }
}

void find(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const std::vector<Use> uses = uses_of(subject);
    for (std::size_t i = 0; i < layout.faces.size(); ++i) {
        const Letterforms forms = letterforms_of(layout, subject.image, static_cast<FaceId>(i));
        if (!forms.gap || !forms.capital) continue;
        judge_gap(subject, layout.faces[i], forms, uses[i], found);
        judge_words(layout.faces[i], forms, uses[i], found);
    }
    judge_lines(subject, found);
}

}  // namespace

const Rule character_spacing{
    .name = "character-spacing",
    .sentence =
        "Characters stand 10 to 65 % of their height apart, in labels a stroke, words a "
        "character's width, lines half a height.",
    .computed =
        "Blank between the ink of neighbouring characters (medians over the face's letters and "
        "digits), "
        "between words, and from the foot of a line's capitals to the head of the next line's, all "
        "as "
        "drawn. Conditions are poor where characters are small or seen from far off the normal.",
    .formula =
        "gap / height of a capital; gap >= stroke; word gap >= width; line gap >= height / 2",
    .sources = sources,
    .figures = figures,
    .find = find,
};

}  // namespace dialplate::rule

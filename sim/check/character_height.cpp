// character-height: capitals and digits are large enough for the eye at the viewing distance.
//
// The height is that of the pixels as drawn, never the nominal size of a face (LEG-11).
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>
#include <set>

namespace dialplate::rule {

namespace {

constexpr RuleSource character_height_sources[] = {
    {"NUREG-0700 Rev. 2 (2002), 1.3.1-4: minimum height (LEG-05)", Trust::read},
    {"NUREG-0700 Rev. 2 (2002), 1.3.1-4: preferred height (LEG-06)", Trust::read},
    {"NUREG-0700 Rev. 2 (2002), 1.3.1-4: upper bounds (LEG-07)", Trust::read},
    {"ISO 9241-3 (1992): the same minimum, capitals without accents count (LEG-05, LEG-11)",
     Trust::second_hand},
};

constexpr RuleFigure character_height_figures[] = {
    {"least_arcmin", "'", "least height of capitals and digits", 16.0, 1.0, 120.0},
    {"preferred_arcmin", "'", "preferred height of capitals and digits", 20.0, 1.0, 120.0},
    {"most_running_arcmin",
     "'",
     "greatest height of text that is read line by line",
     24.0,
     1.0,
     600.0},
    {"most_group_arcmin", "'", "greatest height of a group of characters", 45.0, 1.0, 600.0},
};

constexpr double angle_slack = 1e-9;  // rounding in the arithmetic, minutes of arc

std::optional<int> capital_height(const BuiltImage& image, FaceId face) {
    for (const FaceMeasure& measure : image.measures)
        if (measure.face == face) return measure.capital;
    return std::nullopt;
}

/// The words on an item; of a lamp that shows choices, none: they are many.
const std::string* words_of(const Item& item) {
    if (item.kind == ItemKind::legend) return &item.legend.text;
    if (item.kind == ItemKind::key) return &item.key.text;
    if (item.kind == ItemKind::lamp && item.lamp.when) return &item.lamp.text;
    return nullptr;
}

/// One character alone is no group: an arrow, a colon (LEG-07). Counts the first bytes of UTF-8.
bool single_character(const Item& item) {
    const std::string* words = words_of(item);
    return words != nullptr && std::count_if(words->begin(), words->end(), [](char c) {
                                   return (static_cast<unsigned char>(c) & 0xC0u) != 0x80u;
                               }) == 1;
}

/// Text that is read line by line; the main read-out and single words are not (LEG-07).
bool running_text(const Item& item) {
    return item.kind == ItemKind::legend && item.legend.text.find('\n') != std::string::npos;
}

void find_character_height(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Millimetres pitch = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    if (pitch.value <= 0.0) return;  // seen edge on; nothing has a height
    const Millimetres distance = layout.viewing.distance;
    const auto bound = [&](const char* name) {
        return ArcMinutes{figure(layout, rule::character_height, name)};
    };
    const ArcMinutes least = bound("least_arcmin"), preferred = bound("preferred_arcmin");
    const ArcMinutes most_running = bound("most_running_arcmin");
    const ArcMinutes most_group = bound("most_group_arcmin");
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            std::set<FaceId> judged;
            for (const ShownText& text : texts_of(item, layout)) {
                if (!judged.insert(text.face).second) continue;
                const std::optional<int> capital = capital_height(subject.image, text.face);
                if (!capital || *capital <= 0) continue;
                const ArcMinutes angle =
                    visual_angle({.height = pitch * *capital, .distance = distance});
                const std::string seen = called(item) + ": capitals and digits of " + text.part +
                                         " are " + std::to_string(*capital) + " px high, " +
                                         number(angle.value, 1) + "' at " + number(distance.value) +
                                         " mm";
                if (angle.value < std::max(least, preferred).value - angle_slack) {
                    const bool under = angle.value < least.value - angle_slack;
                    const ArcMinutes wanted = under ? least : preferred;
                    const int pixels =
                        pixels_for({.angle = wanted, .distance = distance, .pitch = pitch}).value;
                    add_finding(found,
                                under ? Severity::must : Severity::should,
                                item.pointer,
                                {angle.value, wanted.value, "arcmin"},
                                seen + (under ? ", needed are " : ", preferred are ") +
                                    number(wanted.value) + "': " + std::to_string(pixels) +
                                    " px reach it",
                                under ? nullptr : character_height_sources[1].text);
                    continue;
                }
                const ArcMinutes most = running_text(item) ? most_running : most_group;
                if (angle <= most || item.kind == ItemKind::readout || single_character(item))
                    continue;
                add_finding(found,
                            Severity::note,
                            item.pointer,
                            {angle.value, most.value, "arcmin"},
                            seen + ", more than " + number(most.value) + "' is read slower",
                            character_height_sources[2].text);
            }
        }
    }
}

}  // namespace

const Rule character_height{
    .name = "character-height",
    .sentence =
        "Capitals and digits subtend 16' (must), better 20' (should), at the viewing distance.",
    .computed =
        "The angle that a capital without accents, or a digit, subtends at the eye: rows of ink as "
        "drawn, times the pitch, foreshortened by the tilt. Read-outs and single characters have "
        "no upper bound.",
    .formula = "angle = 2 * atan(height * cos(tilt) / (2 * distance))",
    .sources = character_height_sources,
    .figures = character_height_figures,
    .find = find_character_height,
};

}  // namespace dialplate::rule

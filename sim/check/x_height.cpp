// x-height: where small letters carry the meaning, they are large enough as well.
#include "sim/check/letterforms.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/slack.hpp"
#include "sim/check/visual_angle.hpp"
#include "sim/check/wording.hpp"

namespace dialplate::rule {

namespace {

constexpr RuleSource x_height_sources[] = {
    {"convention; the standards measure capitals (LEG-11, LEG-12)", Trust::memory},
};

constexpr RuleFigure x_height_figures[] = {
    {"least_arcmin", "'", "least height of small letters without ascender", 16.0, 1.0, 120.0},
};

void find_x_height(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Millimetres pitch = foreshortened(layout.pitch_y(), layout.viewing.tilt);
    if (pitch.value <= 0.0) return;  // seen edge on
    const ArcMinutes least{figure(layout, rule::x_height, "least_arcmin")};
    const Millimetres distance = layout.viewing.distance;
    for (const FaceMeasure& measure : subject.image.measures) {
        if (!measure.x_height || *measure.x_height <= 0) continue;
        if (!letterforms_of(layout, subject.image, measure.face).small_letters) continue;
        const ArcMinutes angle =
            visual_angle({.height = pitch * *measure.x_height, .distance = distance});
        if (angle.value >= least.value - slack) continue;
        const Face& face = layout.faces.at(static_cast<std::size_t>(measure.face));
        const int pixels = pixels_for({.angle = least, .distance = distance, .pitch = pitch}).value;
        add_finding(found,
                    Severity::note,
                    face.pointer,
                    {angle.value, least.value, "arcmin"},
                    called(face) + " has small letters of " + std::to_string(*measure.x_height) +
                        " px, " + number(angle.value, 1) + "' at " + number(distance.value) +
                        " mm; advised are " + number(least.value) +
                        "' where they carry the meaning: " + std::to_string(pixels) +
                        " px reach it");
    }
}

}  // namespace

const Rule x_height{
    .name = "x-height",
    .sentence = "Small letters subtend 16' as well (note).",
    .computed =
        "The angle that a small letter without ascender subtends at the eye, measured as for "
        "character-height. Only of faces that are used with small letters.",
    .formula = "angle = 2 * atan(x-height * cos(tilt) / (2 * distance))",
    .sources = x_height_sources,
    .figures = x_height_figures,
    .find = find_x_height,
};

}  // namespace dialplate::rule

#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"

#include <cmath>
namespace dialplate {
namespace {

/// A slider below its own figure, in steps.
void slide(const SideFrame& side,
           const char* id,
           double& value,
           double least,
           double most,
           double step,
           const std::string& figure) {
    float now = static_cast<float>(value);
    ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x - 110 * side.unit);
    if (ImGui::SliderFloat(id,
                           &now,
                           static_cast<float>(least),
                           static_cast<float>(most),
                           "",
                           most / least > 20 ? ImGuiSliderFlags_Logarithmic : 0))
        value = std::max(least, std::round(now / step) * step);
    ImGui::SameLine(0, 10 * side.unit);
    say_right(side, tint::engraved, figure);
}

}  // namespace

void draw_look(SideFrame& side) {
    Bench& bench = side.bench;
    Aids& aids = bench.habits.aids;
    if (!section(side, "LOOK", aids.any() ? "" : "as it is", aids.any() ? tint::lit : tint::quiet))
        return;
    check_box(side, "an eye at a distance", aids.eye);
    tip(side,
        "Blurs as an eye there does. Enlarge it or go near until your own eye no longer counts.");
    slide(
        side, "##distance", aids.distance_mm, 200, 1500, 10, in_words("%.0f mm", aids.distance_mm));
    slide(side, "##acuity", aids.acuity, 0.2, 1.6, 0.1, in_words("acuity %.1f", aids.acuity));
    check_box(side, "light in the room", aids.room);
    tip(side, "What the room adds to every pixel: black is lifted, contrast falls.");
    slide(side, "##light", aids.light_lux, 1, 20000, 1, in_words("%.0f lux", aids.light_lux));
    say(side, tint::quiet, "colours as seen without");
    constexpr const char* cones[] = {"red cones", "green cones", "blue cones"};
    for (int i = 0; i < 3; ++i) {
        if (i > 0) ImGui::SameLine(0, 4 * side.unit);
        if (press_button(side, cones[i], aids.vision == i))
            aids.vision = aids.vision == i ? std::nullopt : std::optional(i);
    }
    tip(side, "The model is weak for missing blue cones: an indication only.");
    check_box(side, "what the panel hides", aids.panel);
    tip(side, "Red: behind the panel. Amber: hidden by the bezel's depth from where you look.");
    check_box(side, "how often a finger hits", aids.fingers);
    tip(side, "Share of taps at a key's middle that hit it, and the ellipse of 95 % of them.");
    check_box(side, "grid of 5 mm", aids.grid);
    if (bench.piece.prototype() == nullptr) return;
    const Viewing& viewing = bench.piece.layout().viewing;
    if (press_button(side, "As the layout says")) {
        aids.distance_mm = viewing.distance.value;
        aids.light_lux = viewing.light.value;
    }
    tip(side,
        in_words("From %.0f mm, ", viewing.distance.value) +
            in_words("in %.0f lux.", viewing.light.value));
}

}  // namespace dialplate

#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"

#include <algorithm>
#include <cstdio>

namespace dialplate {
namespace {

constexpr ImGuiWindowFlags size_pane =
    ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings;

ImVec2 at(double x, double y) {
    return {static_cast<float>(x), static_cast<float>(y)};
}

/// The outline, with a short line across the two edges and at the corner that a hand can take.
void draw_outline(ImDrawList& draw, const Card& card, float u) {
    const Area area = card.area();
    const float radius = static_cast<float>(card_corner_mm * card.pixels_per_mm());
    draw.AddRectFilled(
        at(area.x, area.y), at(area.right(), area.bottom()), ink(tint::raised), radius);
    draw.AddRect(at(area.x, area.y),
                 at(area.right(), area.bottom()),
                 ink(tint::lit),
                 radius,
                 0,
                 std::max(1.0f, u));
    const double middle_x = area.x + area.width / 2.0, middle_y = area.y + area.height / 2.0;
    const double reach = 10.0 * static_cast<double>(u), thick = 2.0 * static_cast<double>(u);
    draw.AddRectFilled(at(area.right() - thick, middle_y - reach),
                       at(area.right() + thick, middle_y + reach),
                       ink(tint::lit));
    draw.AddRectFilled(at(middle_x - reach, area.bottom() - thick),
                       at(middle_x + reach, area.bottom() + thick),
                       ink(tint::lit));
}

void draw_words(SideFrame& side, const Card& card) {
    Bench& bench = side.bench;
    const float u = side.unit;
    char figure[64];
    std::snprintf(figure,
                  sizeof figure,
                  "%.2f pixels a mm, %.0f dots an inch",
                  card.pixels_per_mm(),
                  card.pixels_per_mm() * 25.4);
    say(side, tint::lit, figure);
    say_wrapped(side,
                tint::engraved,
                "Hold a bank card to the screen, its upper left corner on that of the outline. "
                "Drag the right or the lower edge until it is as large as the card.");
    say_wrapped(side,
                tint::quiet,
                "Arrow keys: 1 pixel, with Shift 10. Drag inside: move. Any card of 85.60 x "
                "53.98 mm will do (ISO/IEC 7810, ID-1).");
    if (press_button(side, "It fits (Enter)")) bench.order(Order::screen_measured, 1);
    ImGui::SameLine(0, 6 * u);
    if (press_button(side, "Leave it (Esc)")) bench.order(Order::screen_measured, 0);
}

}  // namespace

void draw_size(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.piece.prototype() == nullptr) return;
    const bool true_size = bench.plan.zoom == 0;
    const bool measured = bench.screen.known == MeasuredScreen::Known::measured;
    const std::string figure = !true_size ? "x" + std::to_string(bench.plan.zoom)
                               : measured ? "true size"
                                          : "about true size";
    if (!section(side, "SIZE ON THE SCREEN", figure, true_size ? tint::lit : tint::engraved))
        return;
    const float gap = 4 * side.unit;
    if (press_button(side, "-", false, 28 * side.unit)) bench.order(Order::zoom, -1);
    tip(side, "One screen pixel a glass pixel less (-)");
    ImGui::SameLine(0, gap);
    if (press_button(side, "+", false, 28 * side.unit)) bench.order(Order::zoom, 1);
    tip(side, "One screen pixel a glass pixel more (+)");
    ImGui::SameLine(0, gap);
    if (press_button(side, "To the window")) bench.order(Order::fit);
    tip(side, "The greatest whole number that fits (0)");
    ImGui::SameLine(0, gap);
    if (press_button(side, "True size", true_size)) bench.order(Order::true_size);
    tip(side, "As many millimetres as on the receiver; pixels are resampled (T)");
    say_wrapped(side, tint::quiet, "This screen: " + words_of(bench.screen) + ".");
    if (press_button(side, "Measure the screen with a bank card"))
        bench.order(Order::measure_screen);
    tip(side, "Shift T");
}

void draw_card(SideFrame& side) {
    const Card& card = *side.bench.card;
    const float u = side.unit;
    const float width = static_cast<float>(side.bench.plan.window.width);
    const float height = static_cast<float>(side.bench.plan.window.height);
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({width, height});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, ink(tint::bench));
    ImGui::Begin("ground of the card",
                 nullptr,
                 size_pane | ImGuiWindowFlags_NoInputs | ImGuiWindowFlags_NoFocusOnAppearing);
    draw_outline(*ImGui::GetWindowDrawList(), card, u);
    ImGui::End();
    ImGui::PopStyleColor();

    // Beside the card where there is room, else below it, else over it: the edges that count stay free.
    const Area area = card.area();
    const float words = 330 * u, lines = 190 * u, gap = 28 * u;
    const float right = static_cast<float>(area.right()) + gap;
    const float below = static_cast<float>(area.bottom()) + gap;
    ImVec2 place{static_cast<float>(area.x) + gap, static_cast<float>(area.y) + gap};
    if (right + words <= width)
        place = {right, static_cast<float>(area.y)};
    else if (below + lines <= height)
        place = {static_cast<float>(area.x), below};
    ImGui::SetNextWindowPos(place);
    ImGui::SetNextWindowSize({words, 0});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, ink(tint::bench, 0.0));
    ImGui::Begin("words of the card", nullptr, size_pane | ImGuiWindowFlags_NoFocusOnAppearing);
    draw_words(side, card);
    ImGui::End();
    ImGui::PopStyleColor();
}

}  // namespace dialplate

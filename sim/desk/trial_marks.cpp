#include "sim/desk/glass_marks.hpp"
#include "sim/desk/tints.hpp"

#include <cmath>
#include <numbers>

namespace dialplate {
namespace {

ImVec2 point_on(const Plan& plan, double x, double y) {
    return {static_cast<float>(plan.glass.x + x * plan.scale_x),
            static_cast<float>(plan.glass.y + y * plan.scale_y)};
}

/// A disc for a hit, a cross for a miss; dark around, so that it is seen on any ground.
void draw_touch(ImDrawList& draw, const ImVec2& at, bool hit, float u) {
    const float r = 4 * u;
    if (hit) {
        draw.AddCircleFilled(at, r + u, ink(tint::bench), 16);
        draw.AddCircleFilled(at, r, ink(tint::fine), 16);
        return;
    }
    for (const bool dark : {true, false}) {
        const unsigned colour = dark ? ink(tint::bench) : ink(tint::must);
        const float width = dark ? 4 * u : 2 * u;
        draw.AddLine({at.x - r, at.y - r}, {at.x + r, at.y + r}, colour, width);
        draw.AddLine({at.x - r, at.y + r}, {at.x + r, at.y - r}, colour, width);
    }
}

/// One standard deviation about the mean landing.
void draw_spread(ImDrawList& draw, const Bench& bench, const KeyFigures& key, const Box& box) {
    const TouchFigures& figures = key.figures;
    if (!figures.spread_x_mm) return;
    const Layout& layout = bench.trial->layout();
    const double pitch_x = layout.pitch_x().value, pitch_y = layout.pitch_y().value;
    const double x = box.x + box.width / 2.0 + figures.off_x_mm / pitch_x;
    const double y = box.y + box.height / 2.0 + figures.off_y_mm / pitch_y;
    constexpr int corners = 48;
    ImVec2 line[corners];
    for (int i = 0; i < corners; ++i) {
        const double angle = 2.0 * std::numbers::pi * i / corners;
        line[i] = point_on(bench.plan,
                           x + *figures.spread_x_mm / pitch_x * std::cos(angle),
                           y + *figures.spread_y_mm / pitch_y * std::sin(angle));
    }
    draw.AddPolyline(line, corners, ink(tint::bench), ImDrawFlags_Closed, 3);
    draw.AddPolyline(line, corners, ink(tint::engraved), ImDrawFlags_Closed, 1);
}

}  // namespace

void draw_trial_marks(const Bench& bench, float unit) {
    // They say nothing of other keys.
    if (!bench.trial_result || bench.trial_ground.text != bench.piece.text()) return;
    ImDrawList& draw = *ImGui::GetBackgroundDrawList();
    const int page = bench.piece.prototype()->page();
    const Layout& layout = bench.trial->layout();
    for (const KeyFigures& key : bench.trial_result->keys)
        if (key.page == page)
            for (const Item& item : layout.pages[static_cast<std::size_t>(page)].items)
                if (item.pointer == key.key) draw_spread(draw, bench, key, item.box);
    for (const TrialTouch& touch : bench.trial->touches())
        if (touch.page == page)
            draw_touch(draw, point_on(bench.plan, touch.x + 0.5, touch.y + 0.5), touch.hit, unit);
}

}  // namespace dialplate

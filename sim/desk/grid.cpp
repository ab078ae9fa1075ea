#include "sim/desk/grid.hpp"

#include "sim/desk/tints.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// Screen pixels between two lines that do not yet hide what is between them. No source: looked at.
constexpr double nearest_lines = 12.0;
constexpr int least_pixels = 2, most_pixels = 64;
constexpr float least_mm = 0.5f, most_mm = 20.0f;

/// Every how manieth line is drawn.
int drawn_lines(double pitch, double zoom) {
    for (const int every : {1, 2, 5, 10, 20, 50})
        if (pitch * zoom * every >= nearest_lines) return every;
    return 100;
}

}  // namespace

GridPitch pitch_of(const Grid& grid, const Layout& layout) {
    if (!grid.on) return {};
    if (!grid.in_millimetres)
        return {static_cast<double>(grid.pixels), static_cast<double>(grid.pixels)};
    return {grid.millimetres / layout.pitch_x().value, grid.millimetres / layout.pitch_y().value};
}

void draw_grid_row(SideFrame& side) {
    Grid& grid = side.bench.habits.grid;
    const float u = side.unit;
    ImGui::PushID("grid");
    ImGui::AlignTextToFramePadding();
    check_box(side, "Grid", grid.on);
    tip(side, "Edges catch on it where no other item is near; Alt lets go. (G)");
    ImGui::SameLine(0, 14 * u);
    ImGui::SetNextItemWidth(96 * u);
    if (grid.in_millimetres) {
        float millimetres = static_cast<float>(grid.millimetres);
        if (ImGui::InputFloat("##pitch", &millimetres, 0.5f, 1.0f, "%.1f"))
            grid.millimetres = static_cast<double>(std::clamp(millimetres, least_mm, most_mm));
    } else if (ImGui::InputInt("##pitch", &grid.pixels, 1, 4)) {
        grid.pixels = std::clamp(grid.pixels, least_pixels, most_pixels);
    }
    tip(side, "Distance of its lines, from the top left corner of the glass.");
    ImGui::SameLine(0, 6 * u);
    if (press_button(side, "px", !grid.in_millimetres)) grid.in_millimetres = false;
    ImGui::SameLine(0, 4 * u);
    if (press_button(side, "mm", grid.in_millimetres)) grid.in_millimetres = true;
    ImGui::PopID();
}

void draw_grid(ImDrawList& draw, const Bench& bench) {
    const GridPitch pitch = pitch_of(bench.habits.grid, bench.piece.layout());
    if (pitch.x <= 0.0) return;
    const Plan& plan = bench.plan;
    const Area seen = common_part(plan.glass, plan.opening);
    const unsigned colour = ink(tint::note, 0.18);
    const auto left = static_cast<float>(seen.x), right = static_cast<float>(seen.right());
    const auto top = static_cast<float>(seen.y), bottom = static_cast<float>(seen.bottom());
    const int every_x = drawn_lines(pitch.x, plan.scale_x),
              every_y = drawn_lines(pitch.y, plan.scale_y);
    for (int i = every_x; grid_line(pitch.x, i) < bench.piece.layout().glass_width();
         i += every_x) {
        const auto x = static_cast<float>(plan.on_screen({grid_line(pitch.x, i), 0, 0, 0}).x);
        if (x > left && x < right) draw.AddRectFilled({x, top}, {x + 1, bottom}, colour);
    }
    for (int i = every_y; grid_line(pitch.y, i) < bench.piece.layout().glass_height();
         i += every_y) {
        const auto y = static_cast<float>(plan.on_screen({0, grid_line(pitch.y, i), 0, 0}).y);
        if (y > top && y < bottom) draw.AddRectFilled({left, y}, {right, y + 1}, colour);
    }
}

}  // namespace dialplate

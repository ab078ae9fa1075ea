#include "sim/desk/glass_marks.hpp"

#include "sim/desk/grid.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

ImVec2 low(const Area& area) {
    return {static_cast<float>(area.x), static_cast<float>(area.y)};
}
ImVec2 high(const Area& area) {
    return {static_cast<float>(area.right()), static_cast<float>(area.bottom())};
}

/// Four bars around the outside of an area. (Dear ImGui's own rectangles are smoothed, which spreads thin lines over
/// two pixels of half their colour.)
void bars(ImDrawList& draw, const Area& area, int width, unsigned colour) {
    const Area out = grown(area, width);
    draw.AddRectFilled(low(out), {high(out).x, low(area).y}, colour);
    draw.AddRectFilled({low(out).x, high(area).y}, high(out), colour);
    draw.AddRectFilled({low(out).x, low(area).y}, {low(area).x, high(area).y}, colour);
    draw.AddRectFilled({high(area).x, low(area).y}, {high(out).x, high(area).y}, colour);
}

/// A line that can be seen on any ground: light inside, dark outside.
void outline(ImDrawList& draw, const Area& area, Colour colour, float width) {
    const int line = std::max(1, static_cast<int>(width));
    bars(draw, area, line, ink(colour));
    bars(draw, grown(area, line), line, ink(tint::bench, 0.9));
}

void draw_grips(ImDrawList& draw, const Area& area, float u) {
    for (const Pull& pull : pulls) {
        const ImVec2 middle{
            static_cast<float>(area.x) + static_cast<float>(area.width * (pull.x + 1)) / 2,
            static_cast<float>(area.y) + static_cast<float>(area.height * (pull.y + 1)) / 2};
        const float reach = grip_reach * u;
        const ImVec2 a{std::floor(middle.x - reach), std::floor(middle.y - reach)};
        const ImVec2 b{std::floor(middle.x + reach), std::floor(middle.y + reach)};
        draw.AddRectFilled(a, b, ink(tint::bench));
        draw.AddRectFilled({a.x + u, a.y + u}, {b.x - u, b.y - u}, ink(tint::lit));
    }
}

const Item* item_of(const Bench& bench, const std::string& pointer) {
    const Layout& layout = bench.piece.layout();
    const std::optional<ItemIndex> place = item_at(layout, pointer);
    if (!place || place->page != bench.piece.prototype()->page()) return nullptr;
    return &layout.pages[static_cast<std::size_t>(place->page)]
                .items[static_cast<std::size_t>(place->item)];
}

void draw_chosen(ImDrawList& draw, const Bench& bench, float u) {
    const Chosen& chosen = bench.session.chosen();
    for (const std::string& pointer : chosen)
        if (const Item* item = item_of(bench, pointer))
            outline(draw, bench.plan.on_screen(item->box), tint::lit, u);
    if (chosen.size() != 1) return;
    const Item* item = item_of(bench, chosen.front());
    if (item != nullptr && item->kind != ItemKind::picture)
        draw_grips(draw, bench.plan.on_screen(item->box), u);
}

void draw_hand(ImDrawList& draw, const Bench& bench, float u) {
    const Area& glass = bench.plan.glass;
    if (bench.hand.line_x) {
        const float x = static_cast<float>(bench.plan.on_screen({*bench.hand.line_x, 0, 0, 0}).x);
        draw.AddLine({x, static_cast<float>(glass.y)},
                     {x, static_cast<float>(glass.bottom())},
                     ink(tint::note),
                     u);
    }
    if (bench.hand.line_y) {
        const float y = static_cast<float>(bench.plan.on_screen({0, *bench.hand.line_y, 0, 0}).y);
        draw.AddLine({static_cast<float>(glass.x), y},
                     {static_cast<float>(glass.right()), y},
                     ink(tint::note),
                     u);
    }
    if (bench.hand.band) {
        const Area area = *bench.hand.band;
        draw.AddRectFilled(low(area), high(area), ink(tint::lit, 0.12));
        draw.AddRect(low(area), high(area), ink(tint::lit));
    }
}

void draw_finger(ImDrawList& draw, const Bench& bench) {
    if (!bench.hand.finger) return;
    const Plan& plan = bench.plan;
    const float radius_x =
        static_cast<float>(bench.habits.finger.millimetres / 2 * plan.pixels_per_mm_x);
    const ImVec2 middle{
        static_cast<float>(plan.glass.x + (bench.hand.finger->x + 0.5) * plan.scale_x),
        static_cast<float>(plan.glass.y + (bench.hand.finger->y + 0.5) * plan.scale_y)};
    draw.AddCircleFilled(middle, radius_x, ink(tint::engraved, 0.16), 48);
    draw.AddCircle(middle, radius_x, ink(tint::engraved, 0.6), 48, 1.5f);
    draw.AddCircleFilled(middle, 2.5f, ink(tint::engraved, 0.9), 12);
}

}  // namespace

void draw_marks(SideFrame& side) {
    const Bench& bench = side.bench;
    if (bench.piece.prototype() == nullptr) return;
    ImDrawList& draw = *ImGui::GetBackgroundDrawList();
    if (bench.mode == Mode::arrange && bench.true_to_text()) draw_grid(draw, bench);
    for (const Box& box : bench.hand.sent)
        draw.AddRect(low(bench.plan.on_screen(box)),
                     high(bench.plan.on_screen(box)),
                     ink(tint::note),
                     0,
                     0,
                     side.unit);
    if (!bench.lit.empty())
        if (const Item* item = item_of(bench, bench.lit))
            outline(draw, grown(bench.plan.on_screen(item->box), 2), tint::should, 2 * side.unit);
    if (bench.mode == Mode::arrange && bench.true_to_text()) draw_chosen(draw, bench, side.unit);
    draw_trial_marks(bench, side.unit);
    draw_hand(draw, bench, side.unit);
    draw_finger(draw, bench);
}

}  // namespace dialplate

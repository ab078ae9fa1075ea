#include "sim/desk/flowing_buttons.hpp"
#include "sim/desk/grid.hpp"
#include "sim/desk/member_editor.hpp"
#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"

#include <cstdio>

namespace dialplate {
namespace {

void draw_new_items(SideFrame& side) {
    say_small(side, tint::quiet, "NEW");
    FlowingButtons buttons(side);
    for (const ItemKind kind : {ItemKind::readout,
                                ItemKind::key,
                                ItemKind::legend,
                                ItemKind::lamp,
                                ItemKind::meter,
                                ItemKind::scale,
                                ItemKind::picture,
                                ItemKind::frame})
        if (buttons.press(name_of(kind),
                          kind == ItemKind::picture ? "Drop a PNG file on the window." : ""))
            side.bench.order(Order::insert, static_cast<int>(kind));
}

void draw_several(SideFrame& side) {
    struct Line {
        const char* label;
        Edge edge;
        const char* what;
    };
    constexpr Line lines[] = {{"left", Edge::left, "Left edges on one line"},
                              {"middle", Edge::middle, "Middles on one upright line"},
                              {"right", Edge::right, "Right edges on one line"},
                              {"top", Edge::top, "Upper edges on one line"},
                              {"centre", Edge::centre, "Centres on one level line"},
                              {"bottom", Edge::bottom, "Lower edges on one line"}};
    say_small(side, tint::quiet, "ALIGN");
    bool first = true;
    for (const Line& line : lines) {
        if (!first) ImGui::SameLine(0, 4 * side.unit);
        first = false;
        if (press_button(side, line.label))
            side.bench.order(Order::align, static_cast<int>(line.edge));
        tip(side, line.what);
    }
    if (side.bench.session.chosen().size() < 3) return;
    say_small(side, tint::quiet, "SAME GAPS");
    if (press_button(side, "across")) side.bench.order(Order::distribute, 0);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "down")) side.bench.order(Order::distribute, 1);
}

void draw_deeds(SideFrame& side) {
    if (press_button(side, "Duplicate")) side.bench.order(Order::duplicate);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Delete")) side.bench.order(Order::remove);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Draw last")) side.bench.order(Order::raise);
    tip(side, "To the end of the page's list, over whatever it overlaps.");
}

std::string size_in_mm(const Layout& layout, const Item& item) {
    char words[64];
    std::snprintf(words,
                  sizeof words,
                  "%.1f \xC3\x97 %.1f mm",
                  item.box.width * layout.pitch_x().value,
                  item.box.height * layout.pitch_y().value);
    return words;
}

}  // namespace

void draw_item(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.piece.prototype() == nullptr) return;
    const Layout& layout = bench.piece.layout();
    const Chosen& chosen = bench.session.chosen();
    const bool current = bench.true_to_text();
    std::vector<const Item*> items;
    if (current)
        for (const std::string& pointer : chosen)
            if (const std::optional<ItemIndex> place = item_at(layout, pointer))
                items.push_back(&layout.pages[static_cast<std::size_t>(place->page)]
                                     .items[static_cast<std::size_t>(place->item)]);

    std::string figure = "none chosen";
    if (items.size() == 1) figure = items[0]->name;
    if (items.size() > 1) figure = std::to_string(items.size()) + " chosen";
    if (!section(side, "ITEM", figure, items.empty() ? tint::quiet : tint::lit)) return;
    if (!current) {
        say_wrapped(
            side, tint::quiet, "The file has mistakes. Items can be changed once it is mended.");
        return;
    }
    if (bench.mode == Mode::arrange) {
        draw_grid_row(side);
        ImGui::Dummy({0, side.unit});
        draw_new_items(side);
    }
    if (items.empty()) {
        say_wrapped(side,
                    tint::quiet,
                    bench.mode == Mode::arrange
                        ? "Click an item on the glass, or drag around several."
                        : "Press F3 to arrange, then click an item on the glass.");
        return;
    }
    ImGui::Dummy({0, 2 * side.unit});
    if (items.size() == 1) {
        say(side,
            tint::quiet,
            std::string(name_of(items[0]->kind)) + ", " + size_in_mm(layout, *items[0]));
    } else {
        draw_several(side);
    }
    draw_deeds(side);
    ImGui::Dummy({0, 2 * side.unit});
    std::vector<std::string> also;
    bool alike = true;
    for (std::size_t i = 1; i < items.size(); ++i) {
        alike = alike && items[i]->kind == items[0]->kind;
        also.push_back(items[i]->pointer);
    }
    if (!alike) {
        say_wrapped(side,
                    tint::quiet,
                    "They are of different kinds: they can be moved together, not changed.");
        return;
    }
    std::vector<std::string> hide;
    // What must differ from one item to the next is not set for all at once.
    if (items.size() > 1) hide.insert(hide.end(), {"name", "at"});
    draw_members(side, items[0]->pointer, also, hide);
}

}  // namespace dialplate

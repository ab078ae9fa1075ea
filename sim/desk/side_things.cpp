// What has a name in the layout: the present page, paints, faces, looks, values; each to be renamed, changed, made
// anew and, while nobody uses it, deleted.
#include "sim/desk/choosers.hpp"
#include "sim/desk/member_editor.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/member_changes.hpp"
#include "sim/edit/pointers.hpp"

#include <algorithm>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

constexpr float name_width = 108.0f;

/// A field for the name. What uses it follows.
void draw_name(SideFrame& side, Kind kind, const std::string& name, const std::string& place) {
    const float left = ImGui::GetCursorPosX();
    ImGui::AlignTextToFramePadding();
    say(side, tint::quiet, "name");
    ImGui::SameLine(left + name_width * side.unit);
    MemberFields fields(side, {place, {}});
    const float width = ImGui::GetWindowContentRegionMax().x - ImGui::GetCursorPosX();
    const std::string typed = fields.name_field(place, name, width);
    tip(side, "Whatever uses it follows.");
    draw_objections(side, place);
    if (typed.empty()) return;
    fields.make(place,
                std::string("rename ") + noun_of(kind) + " " + name,
                [&](const Grounds& grounds, const std::string& text, const std::string&) {
                    return renamed(grounds.schema, text, grounds.document, {kind, name}, typed);
                });
    if (kind != Kind::page) unfolded(section_of(kind) + pointer_part(typed)) = unfolded(place);
}

void take_away(SideFrame& side, Kind kind, const std::string& name, const std::string& place) {
    MemberFields fields(side, {place, {}});
    fields.make(place,
                std::string("delete ") + noun_of(kind) + " " + name,
                [&](const Grounds& grounds, const std::string& text, const std::string&) {
                    return without(grounds.schema, text, grounds.document, {kind, name});
                });
}

/// One more, like the last.
void make_another(SideFrame& side, Kind kind, const std::string& like) {
    Bench& bench = side.bench;
    const std::string name =
        free_name(*bench.document(), kind, like.empty() ? noun_of(kind) : like);
    bench.want(amend(bench.session.text(),
                     added_thing(bench.grounds(), bench.session.text(), kind, like, name)),
               std::string("new ") + noun_of(kind) + " " + name,
               section_of(kind));
    if (kind == Kind::page) {
        if (!bench.wanted.empty())
            bench.wanted.back().page = static_cast<int>(bench.piece.layout().pages.size());
    } else {
        bench.unfold = section_of(kind) + pointer_part(name);
    }
}

/// What is good to know of a thing while it is folded.
std::string figure_of(Bench& bench, Kind kind, const std::string& name) {
    if (kind == Kind::face && bench.piece.ledger())
        for (const FaceCost& face : bench.piece.ledger()->flash.faces)
            if (bench.piece.layout().faces[static_cast<std::size_t>(face.face)].name == name)
                return grouped(face.bytes.value) + " bytes";
    const std::size_t uses = bench.uses().of(kind, name).size();
    return uses == 0 ? "unused" : uses == 1 ? "1 use" : std::to_string(uses) + " uses";
}

void draw_palette_colours(SideFrame& side, const std::string& name) {
    Bench& bench = side.bench;
    const Node* palettes = bench.document()->find("palettes");
    if (palettes == nullptr) return;
    for (const Member& palette : palettes->members)
        if (palette.value.find(name) != nullptr)
            draw_member(side,
                        "/palettes" + pointer_part(palette.name) + pointer_part(name),
                        "in " + palette.name);
}

void draw_inside(SideFrame& side, Kind kind, const std::string& name, const std::string& place) {
    Bench& bench = side.bench;
    draw_name(side, kind, name, place);
    if (kind == Kind::paint) {
        draw_member(side, place, "colour", true);
        draw_palette_colours(side, name);
        if (bench.piece.prototype() != nullptr)
            if (const Paint* paint = paint_named(bench.piece.layout(), name); paint != nullptr)
                draw_contrasts(side, *paint);
    } else {
        draw_members(side, place);
    }
    const std::vector<std::string>& uses = bench.uses().of(kind, name);
    if (!uses.empty())
        say_wrapped(
            side, tint::quiet, "Used by " + users_in_words(*bench.document(), uses, 4) + ".");
}

void draw_thing(SideFrame& side, Kind kind, const std::string& name) {
    Bench& bench = side.bench;
    const std::string place = section_of(kind) + pointer_part(name);
    const float u = side.unit, end = 18 * u;
    bool& open = unfolded(place);
    ImGui::PushID(place.c_str());
    if (bench.unfold == place) {
        open = true;
        ImGui::SetScrollHereY(0.2f);
        bench.unfold.clear();
    }
    const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float right = ImGui::GetWindowContentRegionMax().x;
    if (ImGui::InvisibleButton("fold", {right - left - end, ImGui::GetFrameHeight()})) open = !open;
    const bool near = ImGui::IsItemHovered() || ImGui::IsItemFocused();
    const float below = ImGui::GetCursorPosY();
    ImGui::SetCursorPos({left, line + 3 * u});
    if (kind == Kind::paint && bench.piece.prototype() != nullptr)
        if (const Paint* paint = paint_named(bench.piece.layout(), name); paint != nullptr)
            swatch(side, on_screen(*paint));
    say(side,
        near || open ? tint::lit : tint::engraved,
        name + " " + (open ? "\xE2\x96\xBC" : "\xE2\x96\xB6"));
    const std::string figure = figure_of(bench, kind, name);
    const float width = ImGui::CalcTextSize(figure.c_str()).x;
    ImGui::GetWindowDrawList()->AddText({at.x + right - left - end - width - 6 * u, at.y + 3 * u},
                                        ink(tint::quiet),
                                        figure.c_str());
    ImGui::SetCursorPos({right - end, line});
    if (end_button(side, "\xC3\x97", std::string("Delete this ") + noun_of(kind)))
        take_away(side, kind, name, place);
    ImGui::SetCursorPos({left, below});
    if (open) {
        ImGui::Indent(10 * u);
        draw_inside(side, kind, name, place);
        ImGui::Unindent(10 * u);
    } else {
        draw_objections(side, place);
    }
    ImGui::PopID();
}

void draw_things(SideFrame& side, Kind kind, const char* title) {
    Bench& bench = side.bench;
    const std::vector<std::string> names = names_of(*bench.document(), kind);
    if (bench.unfold.starts_with(section_of(kind) + "/")) bench.habits.sections[title] = true;
    if (!section(side, title, std::to_string(names.size()), tint::quiet)) return;
    for (const std::string& name : names)
        draw_thing(side, kind, name);
    // It was not made after all.
    if (bench.unfold.starts_with(section_of(kind) + "/") && bench.wanted.empty())
        bench.unfold.clear();
    if (press_button(side, (std::string("New ") + noun_of(kind)).c_str()))
        make_another(side, kind, names.empty() ? "" : names.back());
    draw_objections(side, section_of(kind));
}

/// The items of a page in the order in which they are drawn: to choose from, and to draw earlier or later.
void draw_items(SideFrame& side, const Page& page) {
    Bench& bench = side.bench;
    const std::string list = page.pointer + "/items";
    const float u = side.unit, end = 18 * u;
    bool& open = unfolded(list);
    const std::string count = std::to_string(page.items.size());
    if (press_button(side,
                     ("Items, " + count + (open ? " \xE2\x96\xBC" : " \xE2\x96\xB6")).c_str()))
        open = !open;
    tip(side, "In the order in which they are drawn, the last on top");
    if (!open) return;
    for (std::size_t i = 0; i < page.items.size(); ++i) {
        const Item& item = page.items[i];
        ImGui::PushID(static_cast<int>(i));
        const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
        const float right = ImGui::GetWindowContentRegionMax().x;
        const bool chosen = bench.session.has_chosen(item.pointer);
        ImGui::PushStyleColor(ImGuiCol_Text, ink(chosen ? tint::lit : tint::engraved));
        if (ImGui::Selectable(item.name.c_str(), chosen, 0, {right - left - 2 * end - 4 * u, 0})) {
            if (ImGui::GetIO().KeyShift)
                bench.session.choose_also(item.pointer);
            else
                bench.session.choose({item.pointer});
        }
        ImGui::PopStyleColor();
        tip(side, std::string("A ") + name_of(item.kind) + "; with Shift one more");
        const auto move = [&](const char* label, std::size_t to, const char* what) {
            if (end_button(side, label, what) && to < page.items.size()) {
                bench.want(reordered(bench.session.text(), *bench.document(), list, i, to),
                           "reorder items",
                           page.pointer);
                if (!bench.wanted.empty())
                    bench.wanted.back().choose = Chosen{list + pointer_part(to)};
            }
        };
        ImGui::SetCursorPos({right - 2 * end, line - 3 * u});
        move("\xE2\x96\xB2", i - 1, "Drawn earlier, further below");
        ImGui::SameLine(0, 0);
        move("\xE2\x96\xBC", i + 1, "Drawn later, further above");
        ImGui::SetCursorPos({left, line + ImGui::GetTextLineHeight() + 5 * u});
        ImGui::PopID();
    }
}

void draw_page(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.piece.prototype() == nullptr || !bench.true_to_text()) return;
    const Layout& layout = bench.piece.layout();
    const int number = bench.piece.prototype()->page();
    const int pages = static_cast<int>(layout.pages.size());
    const Page& page = layout.pages[static_cast<std::size_t>(number)];
    if (!section(side, "PAGE", page.name, tint::engraved)) return;
    const std::string place = "/pages/" + std::to_string(number);
    ImGui::PushID(place.c_str());
    draw_name(side, Kind::page, page.name, place);
    draw_members(side, place, {}, {"name", "items"});
    if (press_button(side, "New page")) make_another(side, Kind::page, page.name);
    tip(side, "An empty one with the same ground, behind the others");
    ImGui::SameLine(0, 4 * side.unit);
    const auto move = [&](const char* label, int by, const char* what) {
        const bool possible = number + by >= 0 && number + by < pages;
        if (press_button(side, label) && possible) {
            bench.want(reordered(bench.session.text(),
                                 *bench.document(),
                                 "/pages",
                                 static_cast<std::size_t>(number),
                                 static_cast<std::size_t>(number + by)),
                       "reorder pages",
                       place);
            if (!bench.wanted.empty()) bench.wanted.back().page = number + by;
        }
        tip(side, what);
        ImGui::SameLine(0, 4 * side.unit);
    };
    move("\xE2\x97\x80", -1, "Before the page before it; the first is shown at the start");
    move("\xE2\x96\xB6", 1, "Behind the page behind it");
    if (press_button(side, "Delete page")) {
        take_away(side, Kind::page, page.name, place);
        if (!bench.wanted.empty()) {
            bench.wanted.back().page = std::max(number - 1, 0);
            bench.wanted.back().choose = Chosen{};
        }
    }
    tip(side, "With all its items, while no key turns to it");
    draw_items(side, page);
    ImGui::PopID();
}

}  // namespace

void draw_layout_members(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.document() == nullptr || !bench.schema) {
        if (section(side, "LAYOUT", "", tint::quiet))
            say_wrapped(side,
                        tint::quiet,
                        bench.schema ? "The file is no JSON. It has to be mended in an editor."
                                     : "layout.schema.json was not found; members cannot be "
                                       "changed here.");
        return;
    }
    draw_page(side);
    draw_things(side, Kind::paint, "PAINTS");
    draw_things(side, Kind::face, "FACES");
    draw_things(side, Kind::look, "LOOKS");
    draw_things(side, Kind::value, "VALUES");
    if (section(side, "LAYOUT", "", tint::quiet))
        draw_members(side, "", {}, {"$schema", "paints", "faces", "looks", "values", "pages"});
}

void draw_mistakes(SideFrame& side) {
    Bench& bench = side.bench;
    const std::vector<Finding>& mistakes = bench.piece.mistakes();
    if (mistakes.empty() || bench.piece.text() != bench.session.text()) return;
    const std::string count = std::to_string(mistakes.size());
    if (!section(
            side, "MISTAKES", mistakes.size() == 1 ? "1 to mend" : count + " to mend", tint::must))
        return;
    for (std::size_t i = 0; i < mistakes.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        const std::string& place = mistakes[i].pointer;
        const Node* parent = bench.document() == nullptr || place.empty()
                                 ? nullptr
                                 : node_at(*bench.document(), parent_of(place));
        const Node* value = parent == nullptr ? nullptr : node_at(*bench.document(), place);
        say_small(side,
                  tint::quiet,
                  "LINE " + std::to_string(mistakes[i].place.line) + ", COLUMN " +
                      std::to_string(mistakes[i].place.column));
        if (value != nullptr && bench.schema && parent->kind == Node::Kind::object) {
            draw_member(side, place);
        } else {
            say_wrapped(side, tint::must, mistakes[i].message);
            // An element of a list is mended in the list's rows.
            if (value != nullptr && bench.schema) draw_member(side, parent_of(place));
        }
        ImGui::PopID();
    }
}

}  // namespace dialplate

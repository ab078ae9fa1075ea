#include "sim/desk/choosers.hpp"

#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/member_changes.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/layout/parts.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <vector>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

/// A part that a layout may name, as it is written in its file.
struct ListedPart {
    std::string name;
    std::string figures;  ///< For people.
    std::string written;  ///< JSON.
};

std::string words(const char* format, auto... figures) {
    char text[64];
    std::snprintf(text, sizeof text, format, figures...);
    return text;
}

template <class Known>
void take_parts(const Shelf<Known>& shelf,
                const std::string& file,
                const char* section,
                std::vector<ListedPart>& parts) {
    std::ifstream in(file, std::ios::binary);
    const std::string text(std::istreambuf_iterator<char>(in), {});
    for (const Known& known : shelf.parts) {
        ListedPart part{known.name, {}, {}};
        if constexpr (std::is_same_v<Known, Display>)
            part.figures = words("%d x %d, %.1f x %.1f mm",
                                 known.width,
                                 known.height,
                                 known.active_width.value,
                                 known.active_height.value);
        else
            part.figures = grouped(known.flash.value) + " bytes of flash";
        for (std::size_t i = 0;; ++i) {
            const std::string place = std::string("/") + section + "/" + std::to_string(i);
            const auto name = written_at(text, place + "/name");
            if (!name) break;
            if (*name == json_text(known.name)) part.written = value_at(text, place).value_or("");
        }
        parts.push_back(std::move(part));
    }
}

/// Read once: while the window is open, nobody edits a data sheet.
const std::vector<ListedPart>& parts_at(const Bench& bench, const std::string& pointer) {
    static std::vector<ListedPart> displays, mcus;
    std::vector<ListedPart>& parts = pointer == "/display" ? displays : mcus;
    if (!parts.empty() || bench.piece.prototype() == nullptr) return parts;
    const std::string& folder = bench.piece.layout().directory;
    std::vector<Finding> findings;
    if (pointer == "/display")
        take_parts(load_displays(folder, findings),
                   find_file(folder, "parts/displays.json"),
                   "displays",
                   parts);
    else
        take_parts(
            load_mcus(folder, findings), find_file(folder, "parts/mcus.json"), "mcus", parts);
    return parts;
}

/// A state without its quotes.
std::string plain(const std::string& state) {
    return state.size() > 1 && state.front() == '"' ? state.substr(1, state.size() - 2) : state;
}

std::optional<Picked> choose_state(const std::vector<std::string>& states, const Node& value) {
    const std::string now = value.kind == Node::Kind::text      ? json_text(value.text)
                            : value.kind == Node::Kind::boolean ? (value.boolean ? "true" : "false")
                                                                : value.text;
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##state", plain(now).c_str(), ImGuiComboFlags_HeightLarge))
        return taken;
    for (const std::string& state : states)
        if (ImGui::Selectable(plain(state).c_str(), state == now))
            taken = Picked{Picked::What::value, state};
    ImGui::EndCombo();
    return taken;
}

std::optional<Picked> choose_name(SideFrame& side,
                                  const std::string& pointer,
                                  const Shape& shape,
                                  const Node& value) {
    Bench& bench = side.bench;
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##choice", value.text.c_str(), ImGuiComboFlags_HeightLarge))
        return taken;
    for (const std::string& choice : names_that_fit(bench.grounds(), pointer, shape))
        if (ImGui::Selectable(choice.c_str(), choice == value.text))
            // An enumeration of numbers stays one.
            taken = Picked{Picked::What::value,
                           value.kind == Node::Kind::number ? choice : json_text(choice)};
    if (has_names(shape.kind)) {
        const std::string noun = noun_of(shape.kind);
        if (ImGui::Selectable(("New " + noun).c_str()))
            taken = Picked{Picked::What::another, value.text};
        tip(side,
            shape.kind == Kind::page ? "An empty one, behind the others."
                                     : "One like \"" + value.text + "\", to be changed below " +
                                           (shape.kind == Kind::value ? "VALUES." : "LOOKS."));
    }
    ImGui::EndCombo();
    return taken;
}

}  // namespace

bool chooser::line(const SideFrame& side,
                   const std::string& words_of_it,
                   bool chosen,
                   const std::string& figure,
                   Colour colour) {
    const float right = ImGui::GetContentRegionAvail().x + ImGui::GetCursorPosX();
    const bool taken = ImGui::Selectable(words_of_it.c_str(), chosen);
    if (!figure.empty()) {
        ImGui::SameLine(right - ImGui::CalcTextSize(figure.c_str()).x);
        say(side, colour, figure);
    }
    return taken;
}

std::optional<Picked> chooser::part(SideFrame& side,
                                    const std::string& pointer,
                                    const std::string& now) {
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##part", now.c_str(), ImGuiComboFlags_HeightLargest)) return taken;
    for (const ListedPart& part : parts_at(side.bench, pointer)) {
        if (ImGui::Selectable(part.name.c_str(), part.name == now))
            taken = Picked{Picked::What::value, json_text(part.name)};
        ImGui::Indent(10 * side.unit);
        say_small(side, tint::quiet, part.figures);
        ImGui::Unindent(10 * side.unit);
    }
    for (const ListedPart& part : parts_at(side.bench, pointer))
        if (part.name == now && !part.written.empty()) {
            if (ImGui::Selectable("Write its figures out"))
                taken = Picked{Picked::What::written_out, part.written};
            tip(side, "Puts the figures of its data sheet into this layout, to be changed here.");
        }
    ImGui::EndCombo();
    return taken;
}

std::optional<Picked> choose(SideFrame& side,
                             const std::string& pointer,
                             const std::string& name,
                             const Shape& shape,
                             const Node& value) {
    Bench& bench = side.bench;
    if (shape.kind == Kind::colour) return chooser::colour(side, value.text);
    if (pointer == "/display" || pointer == "/mcu/part")
        return chooser::part(side, pointer, value.text);
    if (const std::vector<std::string> states = states_at(*bench.document(), pointer);
        !states.empty())
        return choose_state(states, value);
    if (bench.piece.prototype() != nullptr) {
        if (shape.kind == Kind::paint) return chooser::paint(side, pointer, value.text);
        if (shape.kind == Kind::face) return chooser::face(side, pointer, value.text);
        if (name == "packing") return chooser::packing(side, pointer, shape.choices, value.text);
    }
    return choose_name(side, pointer, shape, value);
}

}  // namespace dialplate

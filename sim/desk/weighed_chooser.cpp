#include "sim/desk/choosers.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/naming.hpp"
#include "sim/edit/pointers.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace dialplate {
namespace {

/// Sizes that are weighed around the present one.
constexpr int sizes_around = 8;

std::string signed_bytes(std::int64_t bytes) {
    if (bytes == 0)
        return "\xC2\xB1"
               "0";
    return (bytes > 0 ? "+" : "\xE2\x88\x92") + grouped(std::llabs(bytes));
}

/// Name of the face at a place like /faces/dial/packing.
std::string face_at(Bench& bench, const std::string& pointer) {
    return named_at(*bench.document(), parent_of(pointer)).name;
}

/// `context 1 234, plain 1 456, runs 1 300`: the one that is used first.
std::string packings_of(const WeighedPackings& face) {
    const std::pair<const char*, std::int64_t> all[] = {
        {"plain", face.plain}, {"runs", face.runs}, {"context", face.context}};
    std::string words = face.packing + " " + grouped(face.bytes);
    for (const auto& [name, bytes] : all)
        if (bytes > 0 && face.packing != name)
            words += ", " + std::string(name) + " " + grouped(bytes);
    return words;
}

/// A line of a list with the flash that it would cost, and below it the face in each packing.
/// @param name  Of the face that the line speaks of.
bool weighed_line(SideFrame& side,
                  const std::string& words,
                  bool chosen,
                  const std::vector<Change>& changes,
                  const std::string& name) {
    std::string figure = "...";
    Colour colour = tint::quiet;
    std::string below = "...";
    const std::optional<Weighed> weighed = side.bench.weighing.weight(changes);
    if (weighed) {
        figure = weighed->more ? signed_bytes(*weighed->more) : "cannot";
        colour = !weighed->more ? tint::must : *weighed->more > 0 ? tint::should : tint::fine;
        const WeighedPackings* face = weighed->face(name);
        below = face != nullptr ? packings_of(*face) : weighed->obstacle;
    }
    const bool taken = chooser::line(side, words, chosen, figure, colour);
    ImGui::Indent(10 * side.unit);
    say_small(side, tint::quiet, below.empty() ? "not stored: nothing uses it" : below);
    ImGui::Unindent(10 * side.unit);
    return taken;
}

void begin_weighing(SideFrame& side) {
    Bench& bench = side.bench;
    bench.weighing.begin(bench.session.revision(), bench.session.text(), bench.piece.file());
    say_small(side, tint::quiet, "DIFFERENCE IN FLASH, BYTES; BELOW, THE FACE IN EACH PACKING");
}

}  // namespace

std::optional<Picked> chooser::face(SideFrame& side,
                                    const std::string& pointer,
                                    const std::string& now) {
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##face", now.c_str(), ImGuiComboFlags_HeightLargest)) return taken;
    begin_weighing(side);
    for (const std::string& name : names_of(*side.bench.document(), Shape::Kind::face))
        if (weighed_line(
                side, name, name == now, {{Change::Kind::replace, pointer, json_text(name)}}, name))
            taken = Picked{Picked::What::value, json_text(name)};
    if (ImGui::Selectable("New face")) taken = Picked{Picked::What::another, now};
    tip(side, "One like \"" + now + "\", to be changed below FACES.");
    ImGui::EndCombo();
    return taken;
}

std::optional<Picked> chooser::packing(SideFrame& side,
                                       const std::string& pointer,
                                       const std::vector<std::string>& choices,
                                       const std::string& now) {
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##packing", now.c_str(), ImGuiComboFlags_HeightLargest)) return taken;
    begin_weighing(side);
    const std::string name = face_at(side.bench, pointer);
    for (const std::string& choice : choices)
        if (weighed_line(side,
                         choice,
                         choice == now,
                         {{Change::Kind::replace, pointer, json_text(choice)}},
                         name))
            taken = Picked{Picked::What::value, json_text(choice)};
    ImGui::EndCombo();
    return taken;
}

std::optional<Picked> chooser::size(SideFrame& side,
                                    const std::string& pointer,
                                    const Shape& shape,
                                    int now) {
    std::optional<Picked> taken;
    if (!ImGui::BeginCombo("##size",
                           std::to_string(now).c_str(),
                           ImGuiComboFlags_HeightLargest | ImGuiComboFlags_NoPreview))
        return taken;
    begin_weighing(side);
    const std::string name = face_at(side.bench, pointer);
    const int least = static_cast<int>(shape.least.value_or(1));
    const int most = static_cast<int>(shape.most.value_or(255));
    for (int size = std::max(now - sizes_around, least); size <= std::min(now + sizes_around, most);
         ++size) {
        const std::vector<Change> changes{{Change::Kind::replace, pointer, std::to_string(size)}};
        const std::optional<Weighed> weighed = side.bench.weighing.weight(changes);
        // A BDF file has the sizes of its strikes alone: the others would only fill the list.
        if (weighed && !weighed->more && size != now) continue;
        if (weighed_line(side, std::to_string(size), size == now, changes, name))
            taken = Picked{Picked::What::value, std::to_string(size)};
    }
    ImGui::EndCombo();
    return taken;
}

}  // namespace dialplate

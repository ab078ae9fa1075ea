#include "sim/check/contrast.hpp"
#include "sim/check/large_text.hpp"
#include "sim/check/rule.hpp"
#include "sim/desk/choosers.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <map>

namespace dialplate {
namespace {

/// What a paint at a place is seen against, and the contrast that it needs there.
struct Against {
    const Paint* paint = nullptr;
    double needed = 1.0;
};

bool is_ground(const std::string& member) {
    return member == "ground" || member == "fill" || member == "unlit";
}

/// The paint that one at this place is seen against: the fill or ground beside an ink, the ink beside a ground;
/// the page's ground where there is none.
const Paint* opposite(const Node& document, const Layout& layout, const std::string& pointer) {
    const std::string name = last_of(pointer);
    std::string object = parent_of(pointer);
    for (int up = 0; up < 2 && !object.empty(); ++up, object = parent_of(object)) {
        const Node* beside = node_at(document, object);
        if (beside == nullptr) continue;
        const char* const grounds[] = {"fill", "ground"};
        const char* const inks[] = {"ink", "edge"};
        for (const char* other : is_ground(name) ? inks : grounds)
            if (const std::string found = text_in(beside, other); !found.empty() && other != name)
                if (const Paint* paint = paint_named(layout, found); paint != nullptr) return paint;
    }
    if (const std::optional<ItemIndex> place = item_at(layout, pointer)) {
        const PaintId ground = layout.pages[static_cast<std::size_t>(place->page)].ground;
        return &layout.paints[static_cast<std::size_t>(ground)];
    }
    return nullptr;
}

FaceId face_of(const Item& item) {
    switch (item.kind) {
        case ItemKind::readout:
            return item.readout.face;
        case ItemKind::key:
            return item.key.face;
        case ItemKind::legend:
            return item.legend.face;
        case ItemKind::lamp:
            return item.lamp.face;
        case ItemKind::meter:
            return item.meter.face;
        default:
            return item.scale.face;
    }
}

double figure_of(const Layout& layout, const char* rule_name, const char* name) {
    const Rule* rule = rule_named(rule_name);
    return rule == nullptr ? 1.0 : figure(layout, *rule, name);
}

double needed_at(const Layout& layout, const std::string& pointer) {
    const double graphics = figure_of(layout, "graphics-contrast", "least");
    const double text = figure_of(layout, "text-contrast", "least");
    const std::string name = last_of(pointer);
    if (name == "edge" || name == "unlit" || name == "pointer_ink") return graphics;
    if (name == "label_ink" || name == "mark_ink" || pointer.starts_with("/looks/")) return text;
    const std::optional<ItemIndex> place = item_at(layout, pointer);
    if (!place) return graphics;
    const Item& item = layout.pages[static_cast<std::size_t>(place->page)]
                           .items[static_cast<std::size_t>(place->item)];
    const bool words = item.kind == ItemKind::readout || item.kind == ItemKind::key ||
                       item.kind == ItemKind::legend || item.kind == ItemKind::lamp;
    if (!words) return graphics;
    return is_large_text(layout, face_of(item)) ? figure_of(layout, "text-contrast", "least_large")
                                                : text;
}

Against against_at(const Node& document, const Layout& layout, const std::string& pointer) {
    return {opposite(document, layout, pointer), needed_at(layout, pointer)};
}

/// The least over all palettes.
double contrast_of(const Paint& paint, const Paint& other) {
    double least = contrast_on_glass(paint.rgb565, other.rgb565);
    for (std::size_t i = 0; i < std::min(paint.others.size(), other.others.size()); ++i)
        least = std::min(least, contrast_on_glass(paint.others[i], other.others[i]));
    return least;
}

void draw_colour(ImDrawList& draw, const ImVec2& low, const ImVec2& high, const Paint& paint) {
    draw.AddRectFilled(low, high, ink(on_screen(paint)));
    draw.AddRect(low, high, ink(tint::rule));
}

std::string ratio(double contrast) {
    char words[24];
    // Cut, not rounded: 4.46 does not reach 4.5.
    std::snprintf(words, sizeof words, "%.1f : 1", std::floor(contrast * 10) / 10);
    return words;
}

}  // namespace

Colour on_screen(const Paint& paint) {
    return expand_rgb565(paint.rgb565);
}

const Paint* paint_named(const Layout& layout, const std::string& name) {
    for (const Paint& paint : layout.paints)
        if (paint.name == name) return &paint;
    return nullptr;
}

void draw_contrasts(SideFrame& side, const Paint& paint) {
    Bench& bench = side.bench;
    const Layout& layout = bench.piece.layout();
    // Of several uses against the same paint the one that needs most.
    std::map<std::string, Against> others;
    for (const std::string& use : bench.uses().of(Shape::Kind::paint, paint.name)) {
        const Against against = against_at(*bench.document(), layout, use);
        if (against.paint == nullptr || against.paint->name == paint.name) continue;
        Against& known = others.try_emplace(against.paint->name, against).first->second;
        known.needed = std::max(known.needed, against.needed);
    }
    if (others.empty()) return;
    say_small(side,
              tint::quiet,
              layout.palettes.size() > 1 ? "CONTRAST, LEAST OF ALL PALETTES" : "CONTRAST");
    for (const auto& [name, against] : others) {
        const double contrast = contrast_of(paint, *against.paint);
        swatch(side, on_screen(*against.paint));
        say(side, tint::engraved, name);
        ImGui::SameLine();
        say_right(side,
                  contrast >= against.needed ? tint::fine : tint::must,
                  ratio(contrast) + ", needs " + ratio(against.needed));
    }
}

std::optional<Picked> chooser::paint(SideFrame& side,
                                     const std::string& pointer,
                                     const std::string& now) {
    Bench& bench = side.bench;
    const Layout& layout = bench.piece.layout();
    const Against against = against_at(*bench.document(), layout, pointer);
    std::optional<Picked> taken;
    // The colour of the paint stands in the closed list, too.
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    const Paint* present = paint_named(layout, now);
    if (ImGui::BeginCombo("##paint", ("      " + now).c_str(), ImGuiComboFlags_HeightLarge)) {
        if (against.paint != nullptr)
            say_small(side,
                      tint::quiet,
                      "CONTRAST WITH " + against.paint->name + ", NEEDS " + ratio(against.needed));
        for (const Paint& paint : layout.paints) {
            ImGui::PushID(paint.name.c_str());
            const ImVec2 here = ImGui::GetCursorScreenPos();
            const double contrast =
                against.paint == nullptr ? 21.0 : contrast_of(paint, *against.paint);
            // The line is one piece to click on; the colour lies over its first columns.
            if (line(side,
                     "      " + paint.name,
                     paint.name == now,
                     against.paint == nullptr ? "" : ratio(contrast),
                     contrast >= against.needed ? tint::fine : tint::must))
                taken = Picked{Picked::What::value, json_text(paint.name)};
            draw_colour(*ImGui::GetWindowDrawList(),
                        {here.x, here.y},
                        {here.x + 20 * side.unit, here.y + ImGui::GetTextLineHeight()},
                        paint);
            ImGui::PopID();
        }
        if (ImGui::Selectable("New paint")) taken = Picked{Picked::What::another, now};
        tip(side, "One like \"" + now + "\", to be changed below PAINTS.");
        ImGui::EndCombo();
    } else if (present != nullptr && against.paint != nullptr && against.paint != present) {
        tip(side,
            ratio(contrast_of(*present, *against.paint)) + " against \"" + against.paint->name +
                "\", needs " + ratio(against.needed));
    }
    if (present != nullptr) {
        const float u = side.unit;
        draw_colour(draw,
                    {at.x + 6 * u, at.y + 4 * u},
                    {at.x + 24 * u, at.y + ImGui::GetFrameHeight() - 4 * u},
                    *present);
    }
    return taken;
}

std::optional<Picked> chooser::colour(SideFrame& side, const std::string& now) {
    unsigned rgb = 0;
    if (now.size() == 7) rgb = static_cast<unsigned>(std::strtoul(now.c_str() + 1, nullptr, 16));
    float parts[3] = {static_cast<float>((rgb >> 16) & 255u) / 255.0f,
                      static_cast<float>((rgb >> 8) & 255u) / 255.0f,
                      static_cast<float>(rgb & 255u) / 255.0f};
    const bool changed = ImGui::ColorEdit3(
        "##colour", parts, ImGuiColorEditFlags_DisplayHex | ImGuiColorEditFlags_NoDragDrop);
    char held[48];
    std::snprintf(held,
                  sizeof held,
                  "The display holds #%06X of it.",
                  static_cast<unsigned>(expand_rgb565(pack_rgb565(rgb))));
    tip(side, held);
    if (!changed) return std::nullopt;
    char words[16];
    std::snprintf(words,
                  sizeof words,
                  "\"#%02X%02X%02X\"",
                  static_cast<unsigned>(parts[0] * 255.0f + 0.5f) & 255u,
                  static_cast<unsigned>(parts[1] * 255.0f + 0.5f) & 255u,
                  static_cast<unsigned>(parts[2] * 255.0f + 0.5f) & 255u);
    return Picked{Picked::What::value, words};
}

}  // namespace dialplate

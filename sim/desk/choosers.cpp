#include "sim/desk/choosers.hpp"

#include "sim/check/contrast.hpp"
#include "sim/check/rule.hpp"
#include "sim/desk/strip.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/item_changes.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <imgui_stdlib.h>
#include <vector>

namespace dialplate {
namespace {

std::vector<std::string> names_in(const Node* object) {
    std::vector<std::string> names;
    if (object != nullptr)
        for (const Member& member : object->members)
            names.push_back(member.name);
    return names;
}

std::vector<std::string> names_for(const Node& document, const Shape& shape) {
    switch (shape.kind) {
        case Shape::Kind::paint:
            return names_in(document.find("paints"));
        case Shape::Kind::face:
            return names_in(document.find("faces"));
        case Shape::Kind::value:
            return names_in(document.find("values"));
        case Shape::Kind::look:
            return names_in(document.find("looks"));
        case Shape::Kind::page: {
            std::vector<std::string> names;
            if (const Node* pages = document.find("pages"); pages != nullptr)
                for (const Node& page : pages->elements)
                    if (const Node* name = page.find("name"); name != nullptr)
                        names.push_back(name->text);
            return names;
        }
        default:
            return shape.choices;
    }
}

const Paint* paint_named(const Layout& layout, const std::string& name) {
    for (const Paint& paint : layout.paints)
        if (paint.name == name) return &paint;
    return nullptr;
}

std::string parent_of(const std::string& pointer) {
    return pointer.substr(0, pointer.rfind('/'));
}

/// The paint that a paint at this place is seen against: the fill or ground beside an ink, the ink beside a
/// ground; the page's ground where there is none.
const Paint* opposite(const Node& document, const Layout& layout, const std::string& pointer) {
    const std::string name = pointer.substr(pointer.rfind('/') + 1);
    const bool is_ground = name == "ground" || name == "fill" || name == "unlit";
    std::string object = parent_of(pointer);
    for (int up = 0; up < 2 && !object.empty(); ++up, object = parent_of(object)) {
        const Node* beside = node_at(document, object);
        if (beside == nullptr) continue;
        const char* const grounds[] = {"fill", "ground"};
        const char* const inks[] = {"ink", "edge"};
        for (const char* other : is_ground ? inks : grounds)
            if (const Node* node = beside->find(other);
                node != nullptr && node->kind == Node::Kind::text && other != name)
                if (const Paint* paint = paint_named(layout, node->text); paint != nullptr)
                    return paint;
    }
    if (const std::optional<ItemIndex> place = item_at(layout, pointer)) {
        const PaintId ground = layout.pages[static_cast<std::size_t>(place->page)].ground;
        return &layout.paints[static_cast<std::size_t>(ground)];
    }
    return nullptr;
}

Colour on_screen(const Paint& paint) {
    return expand_rgb565(paint.rgb565);
}

std::string signed_bytes(std::int64_t bytes) {
    if (bytes == 0)
        return "\xC2\xB1"
               "0";
    return (bytes > 0 ? "+" : "\xE2\x88\x92") + grouped(std::llabs(bytes));
}

/// One line of an open list: words, and a figure at its right edge.
bool line(const SideFrame& side,
          const std::string& words,
          bool chosen,
          const std::string& figure,
          Colour colour) {
    const float right = ImGui::GetContentRegionAvail().x + ImGui::GetCursorPosX();
    const bool taken = ImGui::Selectable(words.c_str(), chosen);
    if (!figure.empty()) {
        ImGui::SameLine(right - ImGui::CalcTextSize(figure.c_str()).x);
        say(side, colour, figure);
    }
    return taken;
}

/// What a rule asks of this layout.
double least_contrast_by(const Layout& layout, const char* name) {
    const Rule* rule = rule_named(name);
    return rule == nullptr || rule->figures.empty()
               ? 1.0
               : figure(layout, *rule, rule->figures.front().name);
}

std::optional<std::string> choose_paint(SideFrame& side,
                                        const std::string& pointer,
                                        const std::string& now) {
    Bench& bench = side.bench;
    const Layout& layout = bench.piece.layout();
    const Paint* against = opposite(*bench.document(), layout, pointer);
    const double for_text = least_contrast_by(layout, "text-contrast");
    const double for_shapes = least_contrast_by(layout, "graphics-contrast");
    std::optional<std::string> taken;
    const auto ratio = [&](const Paint& paint) {
        char words[24] = "";
        if (against != nullptr)
            std::snprintf(
                words, sizeof words, "%.1f : 1", contrast_on_glass(paint.rgb565, against->rgb565));
        return std::string(words);
    };
    // The colour of the paint stands in the closed list, too.
    const ImVec2 at = ImGui::GetCursorScreenPos();
    if (ImGui::BeginCombo("##paint", ("      " + now).c_str(), ImGuiComboFlags_HeightLarge)) {
        if (against != nullptr) say_small(side, tint::quiet, "CONTRAST WITH " + against->name);
        for (const Paint& paint : layout.paints) {
            ImGui::PushID(paint.name.c_str());
            swatch(side, on_screen(paint));
            const double contrast =
                against == nullptr ? 21 : contrast_on_glass(paint.rgb565, against->rgb565);
            if (line(side,
                     paint.name,
                     paint.name == now,
                     ratio(paint),
                     contrast >= for_text     ? tint::fine
                     : contrast >= for_shapes ? tint::should
                                              : tint::must))
                taken = json_text(paint.name);
            ImGui::PopID();
        }
        ImGui::EndCombo();
    } else if (const Paint* paint = paint_named(layout, now); paint != nullptr) {
        const float u = side.unit;
        ImDrawList& draw = *ImGui::GetWindowDrawList();
        const ImVec2 low{at.x + 6 * u, at.y + 4 * u};
        const ImVec2 high{at.x + 24 * u, at.y + ImGui::GetFrameHeight() - 4 * u};
        draw.AddRectFilled(low, high, ink(on_screen(*paint)));
        draw.AddRect(low, high, ink(tint::rule));
        if (against != nullptr && against != paint)
            tip(side, ratio(*paint) + " against \"" + against->name + "\"");
    }
    return taken;
}

/// A list whose lines show what taking them would cost in flash.
std::optional<std::string> choose_weighed(SideFrame& side,
                                          const std::string& pointer,
                                          const std::vector<std::string>& choices,
                                          const std::string& now) {
    Bench& bench = side.bench;
    std::optional<std::string> taken;
    if (!ImGui::BeginCombo("##face", now.c_str(), ImGuiComboFlags_HeightLarge)) return taken;
    say_small(side, tint::quiet, "DIFFERENCE IN FLASH, BYTES");
    bench.weighing.begin(bench.session.revision(), bench.session.text(), bench.piece.file());
    for (const std::string& choice : choices) {
        std::string figure = "...";
        Colour colour = tint::quiet;
        if (const Weighed* weighed =
                bench.weighing.weight({{Change::Kind::replace, pointer, json_text(choice)}});
            weighed != nullptr) {
            figure = weighed->more ? signed_bytes(*weighed->more) : "cannot";
            colour = !weighed->more ? tint::must : *weighed->more > 0 ? tint::should : tint::fine;
        }
        if (line(side, choice, choice == now, figure, colour)) taken = json_text(choice);
    }
    ImGui::EndCombo();
    return taken;
}

std::optional<std::string> choose_colour(SideFrame& side, const std::string& now) {
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
    return words;
}

/// "...; 8 when left out." says 8.
std::optional<std::string> when_left_out(const std::string& description) {
    const std::size_t end = description.rfind(" when left out");
    if (end == std::string::npos) return std::nullopt;
    std::size_t begin = description.rfind(' ', end - 1);
    begin = begin == std::string::npos ? 0 : begin + 1;
    return description.substr(begin, end - begin);
}

bool is_number(const std::string& words) {
    char* end = nullptr;
    std::strtod(words.c_str(), &end);
    return !words.empty() && *end == '\0';
}

}  // namespace

std::optional<std::string> choose(SideFrame& side,
                                  const std::string& pointer,
                                  const OfferedMember& member) {
    const std::string now = member.present == nullptr ? "" : member.present->text;
    const Shape::Kind kind = member.shape.kind;
    if (kind == Shape::Kind::colour) return choose_colour(side, now);
    if (side.bench.piece.prototype() != nullptr) {
        if (kind == Shape::Kind::paint) return choose_paint(side, pointer, now);
        if (kind == Shape::Kind::face || member.name == "packing")
            return choose_weighed(
                side, pointer, names_for(*side.bench.document(), member.shape), now);
    }
    std::optional<std::string> taken;
    if (!ImGui::BeginCombo("##choice", now.c_str())) return taken;
    for (const std::string& choice : names_for(*side.bench.document(), member.shape))
        if (ImGui::Selectable(choice.c_str(), choice == now))
            // An enumeration of numbers stays one.
            taken = member.present != nullptr && member.present->kind == Node::Kind::number
                        ? choice
                        : json_text(choice);
    ImGui::EndCombo();
    return taken;
}

std::string first_value(Bench& bench, const std::string& pointer, const OfferedMember& member) {
    const Node& document = *bench.document();
    const Shape& shape = member.shape;
    const std::optional<std::string> usual = when_left_out(shape.description);
    switch (shape.kind) {
        case Shape::Kind::whole:
        case Shape::Kind::number:
            if (usual && is_number(*usual)) return *usual;
            return std::to_string(static_cast<long long>(shape.least.value_or(0.0)));
        case Shape::Kind::flag:
            return "true";
        case Shape::Kind::text:
        case Shape::Kind::words:
            return member.name == "separator" ? "\".\"" : "\"new\"";
        case Shape::Kind::choice:
        case Shape::Kind::paint:
        case Shape::Kind::face:
        case Shape::Kind::value:
        case Shape::Kind::look:
        case Shape::Kind::page: {
            const std::vector<std::string> names = names_for(document, shape);
            return names.empty() ? "\"\"" : json_text(names.front());
        }
        case Shape::Kind::list:
            return member.name == "groups" ? "[3, 3]" : "[]";
        case Shape::Kind::map:
            return "{}";
        case Shape::Kind::object: {
            if (member.name == "tap" || member.name == "hold") {
                Shape page;
                page.kind = Shape::Kind::page;
                const std::vector<std::string> pages = names_for(document, page);
                return pages.empty() ? "{}" : "{\"page\": " + json_text(pages.front()) + "}";
            }
            std::string text;
            for (const OfferedMember& inner : bench.schema->members(document, pointer))
                if (inner.required)
                    text += (text.empty() ? "" : ", ") + json_text(inner.name) + ": " +
                            first_value(bench, pointer + pointer_part(inner.name), inner);
            return "{" + text + "}";
        }
        default:
            return "null";
    }
}

}  // namespace dialplate

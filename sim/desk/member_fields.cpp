#include "sim/desk/member_fields.hpp"

#include "sim/desk/choosers.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/member_changes.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/layout/mistakes.hpp"

#include <algorithm>
#include <imgui_stdlib.h>
#include <optional>
#include <utility>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

constexpr std::size_t most_lines = 3;

/// What is being typed: one field of the process has the keyboard at a time.
struct Typing {
    std::string place;  ///< Pointer, and which field of it.
    std::string draft;
};
Typing& typing() {
    static Typing one;
    return one;
}

/// A field of one line. @return The text, once it was entered or left and differs.
std::optional<std::string> typed(const char* id,
                                 const std::string& place,
                                 const std::string& now,
                                 ImGuiInputTextFlags flags = 0) {
    Typing& hand = typing();
    std::string field = hand.place == place ? hand.draft : now;
    ImGui::InputText(id, &field, flags);
    if (ImGui::IsItemActive()) {
        hand = {place, field};
        return std::nullopt;
    }
    if (hand.place != place) return std::nullopt;
    hand = {};
    if (!ImGui::IsItemDeactivatedAfterEdit() || field == now) return std::nullopt;
    return field;
}

/// A whole number with two buttons. @return Whether it was entered and differs.
bool whole(const char* id, int& number, int low, int high) {
    const int before = number;
    const bool entered = ImGui::InputInt(id, &number, 1, 10, ImGuiInputTextFlags_EnterReturnsTrue);
    number = std::clamp(number, low, high);
    return (entered || ImGui::IsItemDeactivatedAfterEdit()) && number != before;
}

std::vector<std::string> lines_of(const std::string& words) {
    std::vector<std::string> lines{""};
    for (const char c : words)
        if (c == '\n')
            lines.emplace_back();
        else
            lines.back() += c;
    return lines;
}

std::string joined(const std::vector<std::string>& lines) {
    std::string words;
    for (std::size_t i = 0; i < lines.size(); ++i)
        words += (i == 0 ? "" : "\n") + lines[i];
    return words;
}

bool is_pair(const Shape& shape, const Node& value) {
    return shape.kind == Kind::list && shape.fewest == 2 && shape.greatest == 2 &&
           value.elements.size() == 2 &&
           std::all_of(value.elements.begin(), value.elements.end(), [](const Node& one) {
               return one.kind == Node::Kind::number;
           });
}

}  // namespace

void MemberFields::put(const std::string& pointer,
                       const std::string& value,
                       const std::string& stroke) {
    std::vector<Change> changes{{Change::Kind::replace, pointer, value}};
    for (const std::string& other : reach_.also)
        changes.push_back(
            {Change::Kind::replace, other + pointer.substr(reach_.root.size()), value});
    bench_.want(std::move(changes), "change " + last_of(pointer), stroke);
    bench_.wanted.back().member = pointer;
}

void MemberFields::make(const std::string& pointer, const std::string& name, const Deed& deed) {
    Amended result = deed(bench_.grounds(), bench_.session.text(), pointer);
    for (const std::string& other : reach_.also) {
        if (!result.text) break;
        const std::optional<Node> tree = tree_of(*result.text);
        if (!tree) break;
        Grounds there{*bench_.schema, *tree, bench_.grounds().layout};
        result = deed(there, *result.text, other + pointer.substr(reach_.root.size()));
    }
    bench_.want(std::move(result), name, pointer);
}

bool MemberFields::is_field(const Shape& shape, const Node& value) {
    // What should be an object or a list, but is none, can at least be written anew.
    if (value.kind != Node::Kind::object && value.kind != Node::Kind::list) return true;
    switch (shape.kind) {
        case Kind::object:
        case Kind::map:
            return false;
        case Kind::list:
            return is_pair(shape, value);
        default:
            return true;
    }
}

void MemberFields::field(const std::string& pointer,
                         const std::string& name,
                         const Shape& shape,
                         const Node& value,
                         float width) {
    ImGui::SetNextItemWidth(width);
    if (shape.kind != Kind::fixed && !states_at(*bench_.document(), pointer).empty())
        return chooser(pointer, name, shape, value);
    switch (shape.kind) {
        case Kind::fixed:
            ImGui::AlignTextToFramePadding();
            return say(side_, tint::engraved, value.text);
        case Kind::text:
            if (pointer == "/display" || pointer == "/mcu/part")
                return chooser(pointer, name, shape, value);
            return text_field(pointer, value);
        case Kind::words:
            return lines_field(pointer, value, width);
        case Kind::whole:
            return whole_field(pointer, shape, value);
        case Kind::state:
            if (value.kind == Node::Kind::number && value.integral)
                return whole_field(pointer, shape, value);
            return written_field(pointer);
        case Kind::number:
            return number_field(pointer, value);
        case Kind::flag: {
            bool on = value.boolean;
            if (check_box(side_, "##flag", on)) put(pointer, on ? "true" : "false");
            return;
        }
        case Kind::list:
            return value.kind == Node::Kind::list ? pair_field(pointer, value, width)
                                                  : written_field(pointer);
        case Kind::choice:
        case Kind::paint:
        case Kind::face:
        case Kind::value:
        case Kind::look:
        case Kind::page:
        case Kind::colour:
            return chooser(pointer, name, shape, value);
        default:
            return written_field(pointer);
    }
}

void MemberFields::chooser(const std::string& pointer,
                           const std::string& name,
                           const Shape& shape,
                           const Node& value) {
    const std::optional<Picked> taken = choose(side_, pointer, name, shape, value);
    if (!taken) return;
    switch (taken->what) {
        case Picked::What::value:
            put(pointer, taken->value, shape.kind == Kind::colour ? pointer : "");
            return;
        case Picked::What::another: {
            const std::string made = free_name(*bench_.document(), shape.kind, taken->value);
            make(pointer,
                 std::string("new ") + noun_of(shape.kind) + " " + made,
                 [&](const Grounds& grounds, const std::string& text, const std::string& at) {
                     // Made once, for however many items are chosen.
                     std::vector<Change> changes;
                     if (place_of(grounds.document, shape.kind, made).empty())
                         changes = added_thing(grounds, text, shape.kind, taken->value, made);
                     changes.push_back({Change::Kind::replace, at, json_text(made)});
                     return amend(text, changes);
                 });
            if (shape.kind != Kind::page)
                bench_.unfold = section_of(shape.kind) + pointer_part(made);
            return;
        }
        case Picked::What::written_out:
            make(pointer,
                 "write out " + name,
                 [&](const Grounds&, const std::string& text, const std::string& at) {
                     const Change change{Change::Kind::replace, at, taken->value};
                     return amend(text, std::span(&change, 1));
                 });
            return;
    }
}

void MemberFields::text_field(const std::string& pointer, const Node& value) {
    const std::optional<std::string> words = typed("##text", pointer, value.text);
    if (!words) return;
    if (!is_state_words(*bench_.document(), pointer)) return put(pointer, json_text(*words));
    make(pointer,
         "rename state " + value.text,
         [&](const Grounds& grounds, const std::string& text, const std::string& at) {
             return renamed_state(grounds.schema, text, grounds.document, at, *words);
         });
}

void MemberFields::lines_field(const std::string& pointer, const Node& value, float width) {
    std::vector<std::string> lines = lines_of(value.text);
    const float button = 20 * side_.unit, gap = 4 * side_.unit;
    const float left = ImGui::GetCursorPosX();
    std::optional<std::string> now;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        ImGui::SetCursorPosX(left);
        ImGui::SetNextItemWidth(width - button - gap);
        if (const auto line = typed("##line", pointer + " " + std::to_string(i), lines[i])) {
            lines[i] = *line;
            now = joined(lines);
        }
        ImGui::SameLine(0, gap);
        if (i == 0 && lines.size() < most_lines) {
            if (press_button(side_, "+", false, button)) now = value.text + "\n";
            tip(side_, "One more line");
        } else if (i == 0) {
            ImGui::Dummy({button, 1});
        } else {
            if (press_button(side_, "\xC3\x97", false, button)) {
                lines.erase(lines.begin() + static_cast<std::ptrdiff_t>(i));
                now = joined(lines);
            }
            tip(side_, "Without this line");
        }
        ImGui::PopID();
        if (now) break;
    }
    if (now) put(pointer, json_text(*now));
}

void MemberFields::written_field(const std::string& pointer) {
    const std::string now(written_at(bench_.session.text(), pointer).value_or("null"));
    if (const auto written = typed("##written", pointer, now)) put(pointer, *written);
}

void MemberFields::whole_field(const std::string& pointer, const Shape& shape, const Node& value) {
    int now = static_cast<int>(value.whole);
    if (whole("##whole",
              now,
              static_cast<int>(shape.least.value_or(-2147483648.0)),
              static_cast<int>(shape.most.value_or(2147483647.0))))
        put(pointer, std::to_string(now), pointer);
}

void MemberFields::number_field(const std::string& pointer, const Node& value) {
    if (const auto number =
            typed("##number", pointer, value.text, ImGuiInputTextFlags_CharsScientific))
        put(pointer, *number);
}

void MemberFields::pair_field(const std::string& pointer, const Node& value, float width) {
    const float gap = 6 * side_.unit;
    const Shape one = bench_.schema->within(*bench_.document(), pointer);
    for (std::size_t i = 0; i < 2; ++i) {
        if (i > 0) ImGui::SameLine(0, gap);
        ImGui::PushID(static_cast<int>(i));
        ImGui::SetNextItemWidth((width - gap) / 2);
        whole_field(pointer + pointer_part(i), one, value.elements[i]);
        ImGui::PopID();
    }
}

std::string MemberFields::name_field(const std::string& pointer,
                                     const std::string& name,
                                     float width) {
    ImGui::SetNextItemWidth(width);
    return typed("##name", pointer + " name", name).value_or("");
}

}  // namespace dialplate

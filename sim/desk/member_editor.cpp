#include "sim/desk/member_editor.hpp"

#include "sim/desk/choosers.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/layout/amend.hpp"

#include <algorithm>
#include <imgui_stdlib.h>
#include <map>
#include <optional>
#include <utility>

namespace dialplate {
namespace {

constexpr float label_width = 108.0f;
constexpr int deepest = 6;

/// Where a change goes: a member of one object, and of the others that are chosen with it.
struct Reach {
    std::string root;
    const std::vector<std::string>& also;

    [[nodiscard]] std::vector<Change> everywhere(const Change& change) const {
        std::vector<Change> changes{change};
        for (const std::string& other : also)
            changes.push_back(
                {change.kind, other + change.pointer.substr(root.size()), change.value});
        return changes;
    }
};

class Editor {
public:
    Editor(SideFrame& side, Reach hand) : side_(side), bench_(side.bench), hand_(std::move(hand)) {}

    void draw(const std::string& pointer, const std::vector<std::string>& hide, int depth) {
        const Node* document = bench_.document();
        if (document == nullptr || !bench_.schema || depth > deepest) return;
        const std::vector<OfferedMember> members = bench_.schema->members(*document, pointer);
        std::vector<const OfferedMember*> absent;
        for (const OfferedMember& member : members) {
            if (std::find(hide.begin(), hide.end(), member.name) != hide.end()) continue;
            if (member.present == nullptr) {
                if (member.shape.kind != Shape::Kind::fixed) absent.push_back(&member);
                continue;
            }
            row(pointer, member, depth);
        }
        if (!absent.empty()) offer(pointer, absent);
    }

private:
    void change(Change::Kind kind,
                const std::string& pointer,
                const std::string& value,
                const std::string& stroke = {}) {
        const std::string member = pointer.substr(pointer.rfind('/') + 1);
        bench_.want(hand_.everywhere({kind, pointer, value}),
                    (kind == Change::Kind::remove ? "leave out " : "change ") + member,
                    stroke);
    }
    void put(const std::string& pointer, const std::string& value, const std::string& stroke = {}) {
        change(Change::Kind::replace, pointer, value, stroke);
    }

    void row(const std::string& pointer, const OfferedMember& member, int depth) {
        const std::string there = pointer + pointer_part(member.name);
        const float u = side_.unit;
        ImGui::PushID(there.c_str());
        const bool inside =
            member.shape.kind == Shape::Kind::object || member.shape.kind == Shape::Kind::map ||
            (member.shape.kind == Shape::Kind::list && holds_objects(*member.present));
        const float left = ImGui::GetCursorPosX();
        const float line = ImGui::GetCursorPosY();
        const bool open = inside ? fold(member.name) : (label(member.name), false);
        tip(side_, member.shape.description);
        const float right = ImGui::GetWindowContentRegionMax().x;
        if (!inside) {
            ImGui::SetCursorPos({left + label_width * u, line});
            ImGui::SetNextItemWidth(right - left - label_width * u - 22 * u);
            value(there, member);
        }
        if (!member.required && member.shape.kind != Shape::Kind::fixed) {
            ImGui::SetCursorPos({right - 16 * u, line});
            if (leave_out()) change(Change::Kind::remove, there, {});
            tip(side_, "Leave \"" + member.name + "\" out");
        }
        ImGui::SetCursorPos({left, std::max(ImGui::GetCursorPosY(), line + row_height())});
        if (open) {
            ImGui::Indent(10 * u);
            inner(there, member, depth);
            ImGui::Unindent(10 * u);
        }
        ImGui::PopID();
    }

    [[nodiscard]] float row_height() const { return ImGui::GetFrameHeight() + 3 * side_.unit; }

    void label(const std::string& name) {
        ImGui::AlignTextToFramePadding();
        say(side_, tint::quiet, name);
    }

    bool fold(const std::string& name) {
        bool& open = open_[ImGui::GetID("open")];
        ImGui::AlignTextToFramePadding();
        const ImVec2 at = ImGui::GetCursorScreenPos();
        if (ImGui::InvisibleButton("fold", {label_width * side_.unit, ImGui::GetFrameHeight()}))
            open = !open;
        const bool near = ImGui::IsItemHovered() || ImGui::IsItemFocused();
        ImDrawList& draw = *ImGui::GetWindowDrawList();
        const float pad = 3 * side_.unit;
        draw.AddText({at.x, at.y + pad},
                     ink(near ? tint::lit : tint::quiet),
                     (name + " " + (open ? "\xE2\x96\xBC" : "\xE2\x96\xB6")).c_str());
        return open;
    }

    bool leave_out() {
        ImGui::PushStyleColor(ImGuiCol_Button, 0u);
        ImGui::PushStyleColor(ImGuiCol_Text, ink(tint::rule));
        const bool pressed = ImGui::Button("\xC3\x97", {16 * side_.unit, 0});
        ImGui::PopStyleColor(2);
        return pressed;
    }

    static bool holds_objects(const Node& list) {
        return std::any_of(list.elements.begin(), list.elements.end(), [](const Node& element) {
            return element.kind == Node::Kind::object;
        });
    }

    void inner(const std::string& there, const OfferedMember& member, int depth) {
        const Node& node = *member.present;
        if (node.kind == Node::Kind::list) {
            for (std::size_t i = 0; i < node.elements.size(); ++i) {
                const std::string element = there + pointer_part(i);
                ImGui::PushID(static_cast<int>(i));
                say_small(side_, tint::quiet, member.name + " " + std::to_string(i + 1));
                ImGui::SameLine(ImGui::GetWindowContentRegionMax().x - 16 * side_.unit);
                if (leave_out()) change(Change::Kind::remove, element, {});
                if (node.elements[i].kind == Node::Kind::object)
                    draw(element, {}, depth + 1);
                else
                    raw(element);
                ImGui::PopID();
            }
            if (!node.elements.empty() && press_button(side_, "One more"))
                change(Change::Kind::add,
                       there + "/-",
                       std::string(written(there + pointer_part(node.elements.size() - 1))));
            return;
        }
        draw(there, {}, depth + 1);
    }

    [[nodiscard]] std::string written(const std::string& pointer) const {
        return std::string(written_at(bench_.session.text(), pointer).value_or("null"));
    }

    void value(const std::string& there, const OfferedMember& member) {
        const Node& node = *member.present;
        switch (member.shape.kind) {
            case Shape::Kind::fixed:
                ImGui::AlignTextToFramePadding();
                say(side_, tint::engraved, node.text);
                return;
            case Shape::Kind::text:
                return text(there, node, false);
            case Shape::Kind::words:
                return text(there, node, true);
            case Shape::Kind::whole:
            case Shape::Kind::number:
                return number(there, member);
            case Shape::Kind::flag: {
                bool on = node.boolean;
                if (ImGui::Checkbox("##flag", &on)) put(there, on ? "true" : "false");
                return;
            }
            case Shape::Kind::list:
                if (member.name == "at" || member.name == "size") return pair(there, node);
                return raw(there);
            case Shape::Kind::choice:
            case Shape::Kind::paint:
            case Shape::Kind::face:
            case Shape::Kind::value:
            case Shape::Kind::look:
            case Shape::Kind::page:
            case Shape::Kind::colour: {
                const std::optional<std::string> taken = choose(side_, there, member);
                if (taken)
                    put(there, *taken, member.shape.kind == Shape::Kind::colour ? there : "");
                return;
            }
            default:
                return raw(there);
        }
    }

    /// What is being typed at present, until it is entered or left.
    std::string& typed(const std::string& pointer, const std::string& now) {
        if (typing_ != pointer) {
            scratch_ = now;
            return scratch_;
        }
        return draft_;
    }
    /// To be called behind the field. @return Whether the text was finished and differs.
    bool finished(const std::string& pointer, const std::string& now, const std::string& field) {
        if (ImGui::IsItemActive()) {
            typing_ = pointer;
            draft_ = field;
            return false;
        }
        if (typing_ != pointer) return false;
        typing_.clear();
        return ImGui::IsItemDeactivatedAfterEdit() && field != now;
    }

    void text(const std::string& there, const Node& node, bool lines) {
        std::string& field = typed(there, node.text);
        if (lines && node.text.find('\n') != std::string::npos) {
            ImGui::InputTextMultiline(
                "##text",
                &field,
                {ImGui::CalcItemWidth(), 3 * ImGui::GetTextLineHeight() + 8 * side_.unit});
        } else {
            ImGui::InputText("##text", &field);
        }
        const std::string copy = field;
        if (finished(there, node.text, copy)) put(there, json_text(copy));
        if (lines) tip(side_, "One to three lines; write \\n in the document for a new line.");
    }

    void raw(const std::string& there) {
        const std::string now = written(there);
        std::string& field = typed(there, now);
        ImGui::InputText("##raw", &field);
        const std::string copy = field;
        if (finished(there, now, copy)) put(there, copy);
    }

    /// A whole number with two buttons; a fraction is typed.
    bool whole(const char* id, int& number_now, int low, int high) {
        const int before = number_now;
        const bool entered =
            ImGui::InputInt(id, &number_now, 1, 10, ImGuiInputTextFlags_EnterReturnsTrue);
        number_now = std::clamp(number_now, low, high);
        return (entered || ImGui::IsItemDeactivatedAfterEdit()) && number_now != before;
    }

    void number(const std::string& there, const OfferedMember& member) {
        const Shape& shape = member.shape;
        if (shape.kind == Shape::Kind::whole) {
            int now = static_cast<int>(member.present->whole);
            if (whole("##number",
                      now,
                      static_cast<int>(shape.least.value_or(-2147483648.0)),
                      static_cast<int>(shape.most.value_or(2147483647.0))))
                put(there, std::to_string(now), there);
            return;
        }
        const std::string now = member.present->text;
        std::string& field = typed(there, now);
        ImGui::InputText("##number", &field, ImGuiInputTextFlags_CharsScientific);
        const std::string copy = field;
        if (finished(there, now, copy)) put(there, copy);
    }

    void pair(const std::string& there, const Node& node) {
        const float width = (ImGui::CalcItemWidth() - 6 * side_.unit) / 2;
        for (int i = 0; i < 2 && i < static_cast<int>(node.elements.size()); ++i) {
            if (i > 0) ImGui::SameLine(0, 6 * side_.unit);
            ImGui::PushID(i);
            ImGui::SetNextItemWidth(width);
            int now = static_cast<int>(node.elements[static_cast<std::size_t>(i)].whole);
            const std::string one = there + pointer_part(static_cast<std::size_t>(i));
            if (whole("##number", now, 0, 1023)) put(one, std::to_string(now), one);
            ImGui::PopID();
        }
    }

    /// The members that are left out, in one row of small buttons each of which puts one in.
    void offer(const std::string& pointer, const std::vector<const OfferedMember*>& absent) {
        say_small(side_, tint::quiet, "LEFT OUT");
        ImGui::PushFont(side_.type.small);
        const float end = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
        bool first = true;
        for (const OfferedMember* member : absent) {
            const float width = ImGui::CalcTextSize(member->name.c_str()).x + 12 * side_.unit;
            if (!first && ImGui::GetItemRectMax().x + 4 * side_.unit + width < end)
                ImGui::SameLine(0, 4 * side_.unit);
            first = false;
            ImGui::PushID(member->name.c_str());
            if (press_button(side_, member->name.c_str())) {
                const std::string there = pointer + pointer_part(member->name);
                change(Change::Kind::add, there, first_value(bench_, there, *member));
            }
            ImGui::PopID();
            ImGui::PushFont(side_.type.words);
            tip(side_, member->shape.description);
            ImGui::PopFont();
        }
        ImGui::PopFont();
    }

    SideFrame& side_;
    Bench& bench_;
    Reach hand_;
    std::string scratch_;
    // One field has the keyboard at a time, in one window of the process.
    static inline std::string typing_, draft_;
    static inline std::map<ImGuiID, bool> open_;
};

}  // namespace

void draw_members(SideFrame& side,
                  const std::string& pointer,
                  const std::vector<std::string>& also,
                  const std::vector<std::string>& hide) {
    Editor(side, {pointer, also}).draw(pointer, hide, 0);
}

}  // namespace dialplate

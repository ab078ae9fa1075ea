#include "sim/desk/member_editor.hpp"

#include "sim/check/rule.hpp"
#include "sim/desk/choosers.hpp"
#include "sim/desk/flowing_buttons.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/edit/member_changes.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/edit/waivers.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

constexpr float label_width = 108.0f, index_width = 26.0f, end_width = 18.0f;
constexpr int deepest = 6;

/// How a list of forms is labelled.
std::string label_of(const std::vector<Form>& forms) {
    const auto has = [&](const char* name) {
        return std::any_of(
            forms.begin(), forms.end(), [&](auto& form) { return form.name == name; });
    };
    return has("toggle")        ? "does"
           : has("segments")    ? "drawn from"
           : has("written out") ? "given"
           : has("level")       ? "type"
                                : "kind";
}

/// What an element of a list is called while it is folded: its words, or the first figures in it.
std::string summary_of(const Node& element) {
    for (const char* member : {"text", "name", "rule", "at"})
        if (const Node* found = element.find(member); found != nullptr && !found->text.empty())
            return found->text;
    return element.members.empty() ? "" : element.members.front().value.text;
}

class Editor {
public:
    Editor(SideFrame& side, Reach reach)
        : side_(side), bench_(side.bench), fields_(side, std::move(reach)) {}

    void draw(const std::string& pointer, const std::vector<std::string>& hide, int depth) {
        const Node* document = bench_.document();
        if (document == nullptr || !bench_.schema || depth > deepest) return;
        draw_forms(pointer);
        if (parent_of(pointer) == "/palettes") draw_palette_name(pointer);
        const std::vector<OfferedMember> members = bench_.schema->members(*document, pointer);
        const bool forms = !bench_.schema->forms(*document, pointer).empty();
        std::vector<const OfferedMember*> absent;
        for (const OfferedMember& member : members) {
            if (std::find(hide.begin(), hide.end(), member.name) != hide.end()) continue;
            if (member.shape.kind == Kind::fixed && (forms || member.present == nullptr)) continue;
            if (member.present == nullptr)
                absent.push_back(&member);
            else
                row(pointer, member, depth);
        }
        if (!absent.empty()) offer(pointer, absent);
        if (bench_.schema->shape(*document, pointer).kind == Kind::map) offer_names(pointer);
    }

    void row(const std::string& pointer,
             const OfferedMember& member,
             int depth,
             const std::string& words = {},
             bool stays = false) {
        const std::string there = pointer + pointer_part(member.name);
        const float u = side_.unit;
        ImGui::PushID(there.c_str());
        const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
        const float right = ImGui::GetWindowContentRegionMax().x;
        const bool field = MemberFields::is_field(member.shape, *member.present);
        bool open = false;
        if (field) {
            label(words.empty() ? member.name : words);
            tip(side_, member.shape.description);
            ImGui::SetCursorPos({left + label_width * u, line});
            const float more = has_sizes(there) ? 28 * u : 0;
            fields_.field(there,
                          member.name,
                          member.shape,
                          *member.present,
                          right - left - (label_width + end_width + 4) * u - more);
            if (more > 0) size_beside(there, member, right - end_width * u, line);
        } else {
            open = fold(there, member.name, label_width);
            tip(side_, member.shape.description);
        }
        const float below = std::max(ImGui::GetCursorPosY(), line + row_height());
        if (!stays && !member.required && member.shape.kind != Kind::fixed) {
            ImGui::SetCursorPos({right - end_width * u, line});
            if (end_button(side_, "\xC3\x97", "Leave \"" + member.name + "\" out"))
                leave_out(pointer, member.name);
        }
        ImGui::SetCursorPos({left, below});
        draw_objections(side_, there);
        if (open) {
            ImGui::Indent(10 * u);
            inner(there, member.shape, *member.present, depth + 1);
            ImGui::Unindent(10 * u);
        }
        ImGui::PopID();
    }

private:
    [[nodiscard]] float row_height() const { return ImGui::GetFrameHeight() + 3 * side_.unit; }

    void label(const std::string& name) {
        ImGui::AlignTextToFramePadding();
        say(side_, tint::quiet, name);
    }

    bool fold(const std::string& pointer, const std::string& words, float width) {
        bool& open = unfolded(pointer);
        const ImVec2 at = ImGui::GetCursorScreenPos();
        if (ImGui::InvisibleButton("fold", {width * side_.unit, ImGui::GetFrameHeight()}))
            open = !open;
        const bool near = ImGui::IsItemHovered() || ImGui::IsItemFocused();
        ImGui::GetWindowDrawList()->AddText(
            {at.x, at.y + 3 * side_.unit},
            ink(near ? tint::lit : tint::quiet),
            (words + " " + (open ? "\xE2\x96\xBC" : "\xE2\x96\xB6")).c_str());
        return open;
    }

    /// Whether the number at a place is the size of a face.
    [[nodiscard]] bool has_sizes(const std::string& there) const {
        return last_of(there) == "size" && parent_of(parent_of(there)) == "/faces" &&
               bench_.piece.prototype() != nullptr;
    }

    /// Beside the size of a face a list of sizes with what each would cost.
    void size_beside(const std::string& there,
                     const OfferedMember& member,
                     float right,
                     float line) {
        ImGui::SetCursorPos({right - 26 * side_.unit, line});
        if (const auto taken =
                chooser::size(side_, there, member.shape, static_cast<int>(member.present->whole)))
            fields_.put(there, taken->value);
        tip(side_, "Other sizes, with what each would cost in flash");
    }

    void leave_out(const std::string& pointer, const std::string& name) {
        fields_.make(pointer,
                     "leave out " + name,
                     [&](const Grounds& grounds, const std::string& text, const std::string& at) {
                         return amend(text, left_out(grounds, at, name));
                     });
    }

    /// Which of its forms an object has, and the others to change to.
    void draw_forms(const std::string& pointer) {
        const std::vector<Form> forms = bench_.schema->forms(*bench_.document(), pointer);
        if (forms.size() < 2) return;
        const float u = side_.unit;
        const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
        label(label_of(forms));
        ImGui::SetCursorPos({left + label_width * u, line});
        ImGui::SetNextItemWidth(ImGui::GetWindowContentRegionMax().x - left -
                                (label_width + end_width + 4) * u);
        const auto now =
            std::find_if(forms.begin(), forms.end(), [](auto& form) { return form.present; });
        ImGui::PushID("form");
        if (ImGui::BeginCombo("##form", now == forms.end() ? "" : now->name.c_str())) {
            for (const Form& form : forms) {
                if (ImGui::Selectable(form.name.c_str(), form.present) && !form.present)
                    take(pointer, form);
                tip(side_, form.description);
            }
            ImGui::EndCombo();
        }
        ImGui::PopID();
        ImGui::SetCursorPos({left, line + row_height()});
        draw_objections(side_, pointer);
    }

    /// Nothing in a layout speaks of a palette by its name: it alone is changed.
    void draw_palette_name(const std::string& pointer) {
        for (const std::string& name : member_names("/palettes")) {
            if ("/palettes" + pointer_part(name) != pointer) continue;
            const float u = side_.unit;
            const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
            label("name");
            ImGui::SetCursorPos({left + label_width * u, line});
            const std::string typed = fields_.name_field(
                pointer,
                name,
                ImGui::GetWindowContentRegionMax().x - left - (label_width + end_width + 4) * u);
            draw_objections(side_, pointer);
            if (typed.empty()) return;
            const std::string there = "/palettes" + pointer_part(typed);
            unfolded(there) = true;
            Amended result =
                amend(bench_.session.text(),
                      waivers_following(*bench_.document(), after_rename(pointer, there)));
            if (result.text) result = moved(*result.text, pointer, there);
            bench_.want(std::move(result), "rename palette " + name, pointer);
        }
    }

    std::vector<std::string> member_names(const std::string& pointer) {
        std::vector<std::string> names;
        if (const Node* map = node_at(*bench_.document(), pointer); map != nullptr)
            for (const Member& member : map->members)
                names.push_back(member.name);
        return names;
    }

    void take(const std::string& pointer, const Form& form) {
        fields_.make(pointer,
                     "change to " + form.name,
                     [&](const Grounds& grounds, const std::string& text, const std::string& at) {
                         for (const Form& one : grounds.schema.forms(grounds.document, at))
                             if (one.name == form.name) return given_form(grounds, text, at, one);
                         return Amended{text, {}};
                     });
    }

    void inner(const std::string& there, const Shape& shape, const Node& node, int depth) {
        if (node.kind != Node::Kind::list) return draw(there, {}, depth);
        const Shape element = bench_.schema->within(*bench_.document(), there);
        for (std::size_t i = 0; i < node.elements.size(); ++i)
            element_row(there, i, node, element, shape, depth);
        const bool full =
            shape.greatest && node.elements.size() >= static_cast<std::size_t>(*shape.greatest);
        if (!full && press_button(side_, "One more"))
            fields_.make(
                there,
                "one more in " + last_of(there),
                [](const Grounds& grounds, const std::string& text, const std::string& at) {
                    return amend(text, one_more(grounds, text, at));
                });
    }

    void element_row(const std::string& list,
                     std::size_t i,
                     const Node& node,
                     const Shape& general,
                     const Shape& of_list,
                     int depth) {
        const std::string there = list + pointer_part(i);
        const Node& value = node.elements[i];
        const float u = side_.unit;
        ImGui::PushID(static_cast<int>(i));
        const float left = ImGui::GetCursorPosX(), line = ImGui::GetCursorPosY();
        const float right = ImGui::GetWindowContentRegionMax().x;
        const float ends = 3 * end_width * u;
        // What is there decides: a state is a word alone or written out.
        Shape shape = bench_.schema->shape(*bench_.document(), there);
        if (shape.kind == Kind::other) shape = general;
        const bool field = MemberFields::is_field(shape, value);
        bool open = false;
        if (field) {
            label(std::to_string(i + 1));
            ImGui::SetCursorPos({left + index_width * u, line});
            const std::vector<Form> forms = bench_.schema->forms(*bench_.document(), there);
            const float more = forms.size() > 1 ? 24 * u : 0;
            fields_.field(
                there, "", shape, value, right - left - index_width * u - ends - 4 * u - more);
            if (forms.size() > 1) {
                ImGui::SetCursorPos({right - ends - 24 * u, line});
                if (press_button(side_, "+", false, 20 * u)) {
                    take(there, forms.back());
                    unfolded(there) = true;
                }
                tip(side_, "More than a word: " + forms.back().description);
            }
        } else {
            open = fold(there,
                        std::to_string(i + 1) + "  " + summary_of(value),
                        (right - left - ends) / u - 4);
        }
        const float below = std::max(ImGui::GetCursorPosY(), line + row_height());
        const std::size_t count = node.elements.size();
        ImGui::SetCursorPos({right - ends, line});
        if (end_button(side_, "\xE2\x96\xB2", "Up") && i > 0) move(list, i, i - 1);
        ImGui::SameLine(0, 0);
        if (end_button(side_, "\xE2\x96\xBC", "Down") && i + 1 < count) move(list, i, i + 1);
        ImGui::SameLine(0, 0);
        if (end_button(side_, "\xC3\x97", "Without this one") &&
            count > static_cast<std::size_t>(of_list.fewest))
            leave_out(list, std::to_string(i));
        ImGui::SetCursorPos({left, below});
        draw_objections(side_, there);
        if (open) {
            ImGui::Indent(10 * u);
            inner(there, shape, value, depth + 1);
            ImGui::Unindent(10 * u);
        }
        ImGui::PopID();
    }

    void move(const std::string& list, std::size_t from, std::size_t to) {
        std::swap(unfolded(list + pointer_part(from)), unfolded(list + pointer_part(to)));
        fields_.make(list,
                     "reorder " + last_of(list),
                     [&](const Grounds& grounds, const std::string& text, const std::string& at) {
                         return reordered(text, grounds.document, at, from, to);
                     });
    }

    /// The members that are left out, in rows of small buttons each of which puts one in.
    void offer(const std::string& pointer, const std::vector<const OfferedMember*>& absent) {
        ImGui::Dummy({0, side_.unit});
        say_small(side_, tint::quiet, "LEFT OUT");
        ImGui::PushFont(side_.type.small);
        FlowingButtons buttons(side_);
        for (const OfferedMember* member : absent) {
            const std::string obstacle = obstacle_to(bench_.grounds(), pointer, *member);
            if (buttons.press(member->name,
                              member->shape.description + (obstacle.empty() ? "" : "\n") + obstacle,
                              obstacle.empty()))
                fields_.make(
                    pointer,
                    "put in " + member->name,
                    [&](const Grounds& grounds, const std::string& text, const std::string& at) {
                        return amend(text, added(grounds, at, member->name));
                    });
        }
        ImGui::PopFont();
    }

    /// What the author may name in a map: the paints of a palette, rules and their figures, or anything.
    void offer_names(const std::string& pointer) {
        const Node& document = *bench_.document();
        const Node* map = node_at(document, pointer);
        std::vector<std::pair<std::string, std::string>> names;  // and first values
        if (parent_of(pointer) == "/palettes") {
            for (const std::string& paint : names_of(document, Kind::paint))
                names.emplace_back(
                    paint,
                    std::string(written_at(bench_.session.text(), "/paints" + pointer_part(paint))
                                    .value_or("\"#808080\"")));
        } else if (pointer == "/thresholds") {
            for (const Rule& rule : rules())
                if (!rule.figures.empty()) names.emplace_back(rule.name, "{}");
        } else if (parent_of(pointer) == "/thresholds") {
            if (const Rule* rule = rule_named(last_of(pointer)); rule != nullptr)
                for (const RuleFigure& figure : rule->figures) {
                    char value[32];
                    std::snprintf(value, sizeof value, "%g", figure.value.in("bench"));
                    names.emplace_back(figure.name, value);
                }
        } else if (pointer == "/palettes") {
            std::string name = "palette";
            for (int number = 2; map->find(name) != nullptr; ++number)
                name = "palette " + std::to_string(number);
            names.emplace_back(name, "{}");
        }
        ImGui::PushFont(side_.type.small);
        FlowingButtons buttons(side_);
        for (const auto& [name, value] : names)
            if (map->find(name) == nullptr && buttons.press(name, "Put in \"" + name + "\"")) {
                bench_.want({{Change::Kind::add, pointer + pointer_part(name), value}},
                            "put in " + name);
                bench_.wanted.back().member = pointer;
                unfolded(pointer + pointer_part(name)) = true;
            }
        ImGui::PopFont();
    }

    SideFrame& side_;
    Bench& bench_;
    MemberFields fields_;
};

}  // namespace

bool& unfolded(const std::string& pointer) {
    static std::map<std::string, bool> open;
    return open[pointer];
}

bool end_button(const SideFrame& side, const char* label, const std::string& what) {
    ImGui::PushStyleColor(ImGuiCol_Button, 0u);
    ImGui::PushStyleColor(ImGuiCol_Text, ink(tint::rule));
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {0, 3 * side.unit});
    const bool pressed = ImGui::Button(label, {end_width * side.unit, 0});
    ImGui::PopStyleVar();
    ImGui::PopStyleColor(2);
    tip(side, what);
    return pressed;
}

void draw_objections(SideFrame& side, const std::string& pointer) {
    const Bench& bench = side.bench;
    if (bench.refusal && bench.refusal->member == pointer)
        say_wrapped(side, tint::must, "Not done: " + bench.refusal->words);
    for (const Finding& mistake : bench.piece.mistakes())
        if (mistake.pointer == pointer && !pointer.empty())
            say_wrapped(side, tint::must, mistake.message);
}

void draw_members(SideFrame& side,
                  const std::string& pointer,
                  const std::vector<std::string>& also,
                  const std::vector<std::string>& hide) {
    Editor(side, {pointer, also}).draw(pointer, hide, 0);
}

void draw_member(SideFrame& side,
                 const std::string& pointer,
                 const std::string& label,
                 bool stays) {
    Bench& bench = side.bench;
    if (bench.document() == nullptr || !bench.schema) return;
    const std::string parent = parent_of(pointer);
    for (const OfferedMember& member : bench.schema->members(*bench.document(), parent))
        if (member.present != nullptr && parent + pointer_part(member.name) == pointer)
            Editor(side, {parent, {}}).row(parent, member, 0, label, stays);
}

}  // namespace dialplate

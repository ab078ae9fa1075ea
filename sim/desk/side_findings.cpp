#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/json_words.hpp"
#include "sim/layout/amend.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

namespace dialplate {
namespace {

/// A number as short as it says the same: 6.1, 320, 0.075.
std::string figure(double number, const std::string& unit) {
    char text[48];
    // Whole numbers in full, others as far as they can be trusted.
    std::snprintf(text,
                  sizeof text,
                  number == std::floor(number) && std::fabs(number) < 1e9 ? "%.0f" : "%.4g",
                  number);
    return unit.empty() ? text : std::string(text) + " " + unit;
}

void waive(SideFrame& side, const Finding& finding, const std::string& reason) {
    const std::string waiver =
        "{\"rule\": " + json_text(finding.rule) +
        (finding.pointer.empty() ? "" : ", \"item\": " + json_text(finding.pointer)) +
        ", \"reason\": " + json_text(reason) + "}";
    const bool list = written_at(side.bench.session.text(), "/waived").has_value();
    side.bench.want({{Change::Kind::add,
                      list ? "/waived/-" : "/waived",
                      list ? waiver : "[\n  " + waiver + "\n]"}},
                    "waive " + finding.rule);
}

void draw_details(SideFrame& side, const Finding& finding) {
    if (finding.measured)
        say(side, tint::engraved, "measured  " + figure(*finding.measured, finding.unit));
    if (finding.required) {
        if (finding.measured) ImGui::SameLine(0, 18 * side.unit);
        say(side, tint::engraved, "required  " + figure(*finding.required, finding.unit));
    }
    if (!finding.source.empty()) say_wrapped(side, tint::quiet, finding.source);
    if (finding.waived) {
        say_wrapped(side, tint::quiet, "Waived: " + *finding.waived);
        return;
    }
    if (!side.bench.true_to_text() || finding.severity == Severity::error) return;
    if (!finding.cure.empty()) {
        if (press_button(side, "Mend")) side.bench.want(finding.cure, "mend " + finding.rule);
        tip(side, "Makes the one change that cures it. It can be undone.");
        ImGui::SameLine();
    }
    static std::array<char, 256> reason{};
    if (press_button(side, "Waive...")) ImGui::OpenPopup("waive");
    tip(side, "Accept it on purpose. The layout keeps your reason.");
    if (ImGui::BeginPopup("waive")) {
        say(side, tint::quiet, "Why is it accepted?");
        if (ImGui::IsWindowAppearing()) {
            reason.fill('\0');
            ImGui::SetKeyboardFocusHere();
        }
        ImGui::SetNextItemWidth(300 * side.unit);
        const bool entered = ImGui::InputText(
            "##reason", reason.data(), reason.size(), ImGuiInputTextFlags_EnterReturnsTrue);
        const bool given = reason[0] != '\0';
        if ((press_button(side, "Waive") || entered) && given) {
            waive(side, finding, reason.data());
            ImGui::CloseCurrentPopup();
        }
        if (!given) {
            ImGui::SameLine();
            say(side, tint::quiet, "a reason is needed");
        }
        ImGui::EndPopup();
    }
}

void draw_finding(SideFrame& side, std::size_t number, const Finding& finding) {
    Bench& bench = side.bench;
    const bool open = bench.finding == number;
    ImGui::PushID(static_cast<int>(number));
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float indent = 14 * side.unit;
    const float width = ImGui::GetContentRegionAvail().x;
    const float height =
        ImGui::CalcTextSize(finding.message.c_str(), nullptr, false, width - indent).y;
    if (ImGui::InvisibleButton("finding", {width, height})) {
        bench.finding = open ? std::nullopt : std::optional(number);
        bench.lit = open ? std::string{} : finding.pointer;
        if (!open) bench.order(Order::finding, 0);
    }
    const bool near = ImGui::IsItemHovered() || ImGui::IsItemFocused();
    ImGui::SetCursorScreenPos(at);
    const Colour colour = finding.waived ? tint::rule : colour_of(finding.severity);
    ImGui::GetWindowDrawList()->AddRectFilled(
        {at.x, at.y}, {at.x + 3 * side.unit, at.y + height}, ink(colour));
    ImGui::Indent(indent);
    say_wrapped(side,
                near || open     ? tint::lit
                : finding.waived ? tint::quiet
                                 : tint::engraved,
                finding.message);
    if (open) draw_details(side, finding);
    ImGui::Unindent(indent);
    ImGui::PopID();
}

}  // namespace

void draw_findings(SideFrame& side) {
    const auto& findings = side.bench.piece.findings();
    if (!findings) {
        section(side, "FINDINGS", "", tint::quiet);
        return;
    }
    struct Group {
        Severity severity;
        bool waived;
        const char *one, *several;
    };
    constexpr Group groups[] = {{Severity::error, false, "mistake", "mistakes"},
                                {Severity::must, false, "must be mended", "must be mended"},
                                {Severity::should, false, "should be mended", "should be mended"},
                                {Severity::note, false, "note", "notes"},
                                {Severity::note, true, "waived", "waived"}};
    const auto in_group = [](const Finding& finding, const Group& group) {
        return group.waived ? finding.waived.has_value()
                            : !finding.waived && finding.severity == group.severity;
    };
    std::string counts;
    Colour colour = tint::fine;
    for (const Group& group : groups) {
        const auto number = std::count_if(findings->begin(), findings->end(), [&](auto& finding) {
            return in_group(finding, group);
        });
        if (number == 0 || group.waived) continue;
        if (counts.empty()) colour = colour_of(group.severity);
        const char* word = group.severity == Severity::must     ? "must"
                           : group.severity == Severity::should ? "should"
                           : number == 1                        ? group.one
                                                                : group.several;
        counts += (counts.empty() ? "" : ", ") + std::to_string(number) + " " + word;
    }
    if (!section(side, "FINDINGS", counts.empty() ? "nothing to mend" : counts, colour)) return;
    if (findings->empty()) {
        say(side, tint::quiet, "Every rule was met.");
        return;
    }
    for (const Group& group : groups) {
        const auto number = std::count_if(findings->begin(), findings->end(), [&](auto& finding) {
            return in_group(finding, group);
        });
        if (number == 0) continue;
        const std::string title =
            std::to_string(number) + " " + (number == 1 ? group.one : group.several);
        if (group.waived) {
            // Accepted on purpose: to be seen when asked for.
            bool& open = side.bench.habits.sections.try_emplace("WAIVED", false).first->second;
            if (press_button(side, title.c_str(), open)) open = !open;
            if (!open) continue;
        } else {
            say_small(side, tint::quiet, title);
        }
        for (std::size_t i = 0; i < findings->size(); ++i)
            if (in_group((*findings)[i], group)) draw_finding(side, i, (*findings)[i]);
    }
}

}  // namespace dialplate

#include "sim/desk/side_parts.hpp"

#include "sim/desk/tints.hpp"

#include <algorithm>
#include <cstdio>

namespace dialplate {
namespace {

constexpr const char* opened = "\xE2\x96\xBC";  // U+25BC
constexpr const char* closed = "\xE2\x96\xB6";  // U+25B6

/// With line feeds in the place of spaces where the present face needs them. (Dear ImGui's own wrapping also breaks
/// after points, commas and quotes: within figures and before the comma behind a name.)
std::string wrapped(std::string words, float room) {
    std::size_t line = 0, space = std::string::npos;
    for (std::size_t at = 0; at <= words.size(); ++at) {
        if (at < words.size() && words[at] != ' ' && words[at] != '\n') continue;
        if (space != std::string::npos &&
            ImGui::CalcTextSize(words.c_str() + line, words.c_str() + at).x > room) {
            words[space] = '\n';
            line = space + 1;
        }
        space = at;
        if (at < words.size() && words[at] == '\n') {
            line = at + 1;
            space = std::string::npos;
        }
    }
    return words;
}

}  // namespace

std::string in_words(const char* format, double number) {
    char text[48];
    std::snprintf(text, sizeof text, format, number);
    return text;
}

bool section(SideFrame& side, const char* title, const std::string& figure, Colour colour) {
    const float u = side.unit;
    bool& open = side.bench.habits.sections.try_emplace(title, true).first->second;
    ImGui::Dummy({0, 2 * u});
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float width = ImGui::GetContentRegionAvail().x, height = 24 * u;
    ImGui::PushID(title);
    if (ImGui::InvisibleButton("title", {width, height})) open = !open;
    const bool near = ImGui::IsItemHovered() || ImGui::IsItemFocused();
    ImGui::PopID();
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRectFilled(at, {at.x + width, at.y + u}, ink(tint::strip_line));
    const Colour words = near ? tint::lit : tint::quiet;
    const float small = side.type.small->FontSize;
    const float base = at.y + 16 * u;
    draw.AddText(side.type.small,
                 small,
                 {at.x, base - side.type.small->Ascent},
                 ink(words),
                 open ? opened : closed);
    draw.AddText(
        side.type.small, small, {at.x + 14 * u, base - side.type.small->Ascent}, ink(words), title);
    const float figure_width =
        side.type.words->CalcTextSizeA(side.type.words->FontSize, 9999, 0, figure.c_str()).x;
    draw.AddText(side.type.words,
                 side.type.words->FontSize,
                 {at.x + width - figure_width, base - side.type.words->Ascent},
                 ink(colour),
                 figure.c_str());
    if (open) ImGui::Dummy({0, u});
    return open;
}

void say(const SideFrame&, Colour colour, const std::string& words) {
    ImGui::PushStyleColor(ImGuiCol_Text, ink(colour));
    ImGui::TextUnformatted(words.c_str());
    ImGui::PopStyleColor();
}

void say_small(const SideFrame& side, Colour colour, const std::string& words) {
    ImGui::PushFont(side.type.small);
    say(side, colour, words);
    ImGui::PopFont();
}

void say_wrapped(const SideFrame& side, Colour colour, const std::string& words) {
    say(side, colour, wrapped(words, ImGui::GetContentRegionAvail().x));
}

bool check_box(const SideFrame& side, const char* label, bool& on) {
    ImGui::PushStyleVar(ImGuiStyleVar_FrameBorderSize, side.unit);
    const bool changed = ImGui::Checkbox(label, &on);
    ImGui::PopStyleVar();
    return changed;
}

void say_right(const SideFrame& side, Colour colour, const std::string& words) {
    const float room = ImGui::GetContentRegionAvail().x;
    const float width = ImGui::CalcTextSize(words.c_str()).x;
    ImGui::SetCursorPosX(ImGui::GetCursorPosX() + std::max(room - width, 0.0f));
    say(side, colour, words);
}

void tip(const SideFrame& side, const std::string& words) {
    if (words.empty() || !ImGui::IsItemHovered()) return;
    ImGui::BeginTooltip();
    ImGui::TextUnformatted(wrapped(words, 330 * side.unit).c_str());
    ImGui::EndTooltip();
}

bool press_button(const SideFrame& side, const char* label, bool on, float width) {
    ImGui::PushStyleColor(ImGuiCol_Text, ink(on ? tint::lit : tint::engraved));
    const bool pressed = ImGui::Button(label, {width, 0});
    ImGui::PopStyleColor();
    if (on) {
        const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
        ImGui::GetWindowDrawList()->AddRectFilled({low.x + 2 * side.unit, high.y - 2 * side.unit},
                                                  {high.x - 2 * side.unit, high.y},
                                                  ink(tint::lit));
    }
    return pressed;
}

void dot(const SideFrame& side, Colour colour) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float radius = 3.5f * side.unit;
    ImGui::GetWindowDrawList()->AddCircleFilled(
        {at.x + radius, at.y + ImGui::GetTextLineHeight() / 2}, radius, ink(colour), 12);
    ImGui::Dummy({3 * radius, ImGui::GetTextLineHeight()});
    ImGui::SameLine(0, 0);
}

void swatch(const SideFrame& side, Colour colour) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float height = ImGui::GetTextLineHeight(), width = 20 * side.unit;
    ImDrawList& draw = *ImGui::GetWindowDrawList();
    draw.AddRectFilled(at, {at.x + width, at.y + height}, ink(colour));
    draw.AddRect(at, {at.x + width, at.y + height}, ink(tint::rule));
    ImGui::Dummy({width, height});
    ImGui::SameLine(0, 7 * side.unit);
}

}  // namespace dialplate

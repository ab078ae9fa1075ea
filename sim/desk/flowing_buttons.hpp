// Buttons that flow over as many lines as they need.
#pragma once

#include "sim/desk/side_parts.hpp"

#include <string>

namespace dialplate {

class FlowingButtons {
public:
    explicit FlowingButtons(SideFrame& side) : side_(side) {}

    /// @param what  For the tip.
    /// @return Whether it was pressed.
    bool press(const std::string& name, const std::string& what, bool possible = true) {
        const float gap = 4 * side_.unit;
        const float end = ImGui::GetWindowPos().x + ImGui::GetWindowContentRegionMax().x;
        const float width =
            ImGui::CalcTextSize(name.c_str()).x + 2 * ImGui::GetStyle().FramePadding.x;
        if (!first_ && ImGui::GetItemRectMax().x + gap + width < end) ImGui::SameLine(0, gap);
        first_ = false;
        ImGui::PushID(name.c_str());
        // What cannot be pressed has no ground, and its tip says why.
        if (!possible) ImGui::PushStyleColor(ImGuiCol_Button, 0u);
        const bool pressed = press_button(side_, name.c_str());
        if (!possible) ImGui::PopStyleColor();
        ImGui::PopID();
        ImGui::PushFont(side_.type.words);
        tip(side_, what);
        ImGui::PopFont();
        return pressed && possible;
    }

private:
    SideFrame& side_;
    bool first_ = true;
};

}  // namespace dialplate

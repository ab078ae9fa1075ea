#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"
#include "sim/edit/differences.hpp"

#include <algorithm>
#include <filesystem>

namespace dialplate {
namespace {

/// A question with a coloured edge, so that it is seen without being a shock.
class Asked {
public:
    Asked(SideFrame& side, Colour colour)
        : side_(side), colour_(colour), top_(ImGui::GetCursorScreenPos()) {
        ImGui::Dummy({0, 2 * side.unit});
        ImGui::Indent(12 * side.unit);
    }
    ~Asked() {
        ImGui::Unindent(12 * side_.unit);
        const float bottom = ImGui::GetItemRectMax().y;
        ImGui::GetWindowDrawList()->AddRectFilled(
            {top_.x, top_.y + 2 * side_.unit}, {top_.x + 3 * side_.unit, bottom}, ink(colour_));
        ImGui::Dummy({0, 4 * side_.unit});
    }
    Asked(const Asked&) = delete;
    Asked& operator=(const Asked&) = delete;

private:
    SideFrame& side_;
    Colour colour_;
    ImVec2 top_;
};

void draw_quarrel(SideFrame& side) {
    Bench& bench = side.bench;
    const Asked asked(side, tint::should);
    say_wrapped(side,
                tint::engraved,
                "The file was saved by another program while you have unsaved changes.");
    if (press_button(side, "Show mine", !bench.quarrel->showing_theirs) &&
        bench.quarrel->showing_theirs)
        bench.order(Order::show_theirs, 0);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Show theirs", bench.quarrel->showing_theirs) &&
        !bench.quarrel->showing_theirs)
        bench.order(Order::show_theirs, 1);
    const std::vector<Difference> differences =
        differences_between(bench.session.text(), bench.quarrel->theirs);
    constexpr std::size_t most = 5;
    for (std::size_t i = 0; i < std::min(differences.size(), most); ++i) {
        say_small(side, tint::quiet, differences[i].pointer);
        say_wrapped(side,
                    tint::engraved,
                    "mine " + differences[i].mine + "   theirs " + differences[i].theirs);
    }
    if (differences.size() > most)
        say(side, tint::quiet, "and " + std::to_string(differences.size() - most) + " more");
    if (press_button(side, "Keep mine")) bench.order(Order::keep_mine);
    tip(side, "The next save writes your text over theirs. Undo leads to theirs. (F7)");
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Take theirs")) bench.order(Order::take_theirs);
    tip(side, "Undo leads back to yours. (F8)");
}

void draw_rescued(SideFrame& side) {
    Bench& bench = side.bench;
    const Asked asked(side, tint::should);
    say_wrapped(
        side, tint::engraved, "The last time, unsaved changes of this layout were left behind.");
    if (press_button(side, "Restore them")) bench.order(Order::restore);
    tip(side, "As a step that can be undone. (Ctrl R)");
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Drop them")) bench.order(Order::give_up);
}

void draw_leaving(SideFrame& side) {
    Bench& bench = side.bench;
    const Asked asked(side, tint::should);
    say_wrapped(side, tint::engraved, "There are unsaved changes. Save before closing?");
    if (press_button(side, "Save and close")) {
        bench.order(Order::save);
        bench.order(Order::leave);
    }
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Close without")) bench.order(Order::leave, 1);
    ImGui::SameLine(0, 4 * side.unit);
    if (press_button(side, "Stay")) bench.order(Order::stay);
}

}  // namespace

void draw_head(SideFrame& side) {
    Bench& bench = side.bench;
    const float gap = 4 * side.unit;
    const float width = (ImGui::GetContentRegionAvail().x - 2 * gap) / 3;
    struct ModeKey {
        const char* label;
        Mode mode;
        const char* what;
    };
    constexpr ModeKey keys[] = {
        {"OPERATE", Mode::operate, "The mouse is a finger, the knob tunes (F2)"},
        {"ARRANGE", Mode::arrange, "Move, size and change items (F3)"},
        {"LOOK", Mode::look, "Read it as from the operating position (F4)"}};
    ImGui::PushFont(side.type.small);
    ImGui::PushStyleVar(ImGuiStyleVar_FramePadding, {6 * side.unit, 7 * side.unit});
    for (const ModeKey& key : keys) {
        if (key.mode != Mode::operate) ImGui::SameLine(0, gap);
        if (press_button(side, key.label, bench.mode == key.mode, width))
            bench.order(Order::mode, static_cast<int>(key.mode));
        ImGui::PushFont(side.type.words);
        tip(side, key.what);
        ImGui::PopFont();
    }
    ImGui::PopStyleVar();
    ImGui::PopFont();

    ImGui::AlignTextToFramePadding();
    const bool changed = bench.session.changed();
    say(side, tint::engraved, std::filesystem::path{bench.piece.file()}.filename().string());
    tip(side, bench.piece.file());
    ImGui::SameLine(0, 10 * side.unit);
    ImGui::AlignTextToFramePadding();
    say(side,
        !bench.piece.mistakes().empty() ? tint::must
        : changed                       ? tint::lit
                                        : tint::quiet,
        !bench.piece.mistakes().empty()
            ? (bench.piece.can_be_read() ? "has mistakes" : "cannot be read")
        : changed ? "not saved"
                  : "saved");
    if (!bench.session.can_undo() && !bench.session.can_redo() && !changed) return;
    const float save = 54 * side.unit, step = 46 * side.unit;
    const float right = ImGui::GetWindowContentRegionMax().x;
    ImGui::SameLine(right - save - 2 * (step + gap));
    if (press_button(side, "Undo", false, step)) bench.order(Order::undo);
    tip(side,
        bench.session.can_undo() ? "Undo: " + bench.session.undo_name() + " (Ctrl Z)"
                                 : "Nothing to undo");
    ImGui::SameLine(right - save - step - gap);
    if (press_button(side, "Redo", false, step)) bench.order(Order::redo);
    tip(side,
        bench.session.can_redo() ? "Redo: " + bench.session.redo_name() + " (Ctrl Y)"
                                 : "Nothing to redo");
    ImGui::SameLine(right - save);
    if (press_button(side, "Save", changed, save)) bench.order(Order::save);
    tip(side, "Ctrl S. Only what you changed differs in the file.");
}

void draw_asked(SideFrame& side) {
    Bench& bench = side.bench;
    if (bench.leaving) draw_leaving(side);
    if (bench.quarrel) draw_quarrel(side);
    if (bench.rescued) draw_rescued(side);
    if (!bench.notice) return;
    const Asked asked(side, bench.notice->bad ? tint::must : tint::fine);
    say_wrapped(side, tint::engraved, bench.notice->words);
}

}  // namespace dialplate

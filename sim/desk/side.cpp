#include "sim/desk/side.hpp"

#include "sim/desk/glass_marks.hpp"
#include "sim/desk/side_parts.hpp"
#include "sim/desk/tints.hpp"

#include <SDL.h>

#include <algorithm>
#include <backends/imgui_impl_sdl.h>
#include <cmath>
#include <filesystem>
#include <imgui.h>

namespace dialplate {
namespace {

/// A window of fixed place without any trim.
constexpr ImGuiWindowFlags bare_pane =
    ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove | ImGuiWindowFlags_NoSavedSettings;

void draw_keys(SideFrame& side, const KeySheet& sheet) {
    const float u = side.unit;
    say_small(side, tint::quiet, sheet.title);
    for (const KeyLine& line : sheet.lines) {
        say(side, tint::engraved, line.keys);
        ImGui::SameLine(190 * u);  // counted from the edge of the group
        say(side, tint::quiet, line.what);
    }
    ImGui::Dummy({0, 4 * u});
}

/// In two columns where the window is wide, lest it be too high.
void draw_help(SideFrame& side) {
    const float u = side.unit;
    const Plan& plan = side.bench.plan;
    const ImVec2 middle{static_cast<float>(plan.window.width) / 2,
                        static_cast<float>(plan.window.height) / 2};
    ImGui::SetNextWindowPos(middle, ImGuiCond_Always, {0.5f, 0.5f});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, ink(tint::raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, u);
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {24 * u, 18 * u});
    const bool wide = static_cast<float>(plan.window.width) >= 1080 * u;
    if (!wide) ImGui::PushStyleVar(ImGuiStyleVar_ItemSpacing, {8 * u, 2 * u});
    if (ImGui::Begin("help", nullptr, bare_pane | ImGuiWindowFlags_AlwaysAutoResize)) {
        const std::span<const KeySheet> sheets = key_sheets();
        ImGui::BeginGroup();
        draw_keys(side, sheets[0]);
        ImGui::EndGroup();
        if (wide) ImGui::SameLine(0, 36 * u);
        ImGui::BeginGroup();
        for (const KeySheet& sheet : sheets.subspan(1))
            draw_keys(side, sheet);
        say_small(side, tint::quiet, "ANY KEY CLOSES THIS SHEET");
        ImGui::EndGroup();
    }
    ImGui::End();
    ImGui::PopStyleVar(wide ? 2 : 3);
    ImGui::PopStyleColor();
}

Area covered(const ImDrawList& list) {
    if (list.VtxBuffer.empty()) return {};
    float left = 1e9f, top = 1e9f, right = -1e9f, bottom = -1e9f;
    for (const ImDrawCmd& command : list.CmdBuffer) {
        if (command.ElemCount == 0) continue;
        left = std::min(left, command.ClipRect.x);
        top = std::min(top, command.ClipRect.y);
        right = std::max(right, command.ClipRect.z);
        bottom = std::max(bottom, command.ClipRect.w);
    }
    float l = 1e9f, t = 1e9f, r = -1e9f, b = -1e9f;
    for (const ImDrawVert& corner : list.VtxBuffer) {
        l = std::min(l, corner.pos.x);
        t = std::min(t, corner.pos.y);
        r = std::max(r, corner.pos.x);
        b = std::max(b, corner.pos.y);
    }
    left = std::floor(std::max(left, l - 1));
    top = std::floor(std::max(top, t - 1));
    right = std::ceil(std::min(right, r + 1));
    bottom = std::ceil(std::min(bottom, b + 1));
    return {static_cast<int>(left),
            static_cast<int>(top),
            static_cast<int>(right - left),
            static_cast<int>(bottom - top)};
}

}  // namespace

Side::~Side() {
    if (!open_) return;
    ImGui_ImplSDL2_Shutdown();
    ImGui::DestroyContext();
}

void Side::open(SDL_Window* window) {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.ConfigWindowsMoveFromTitleBarOnly = true;
    io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
    ImGui_ImplSDL2_InitForSDLRenderer(window);
    open_ = true;
}

std::string Side::hold(Canvas& canvas, const Faces& faces, int unit) {
    if (type_.words == nullptr || unit != unit_) {
        unit_ = unit;
        type_ = letter(faces);
        dress(unit);
    }
    seen_.clear();
    return brush_.hold(canvas);
}

void Side::handle(const SDL_Event& event) {
    ImGui_ImplSDL2_ProcessEvent(&event);
}

bool Side::has_mouse(const Plan& plan, int x, int y) const {
    return plan.side.holds(x, y) || plan.handle.holds(x, y) || asked_.holds(x, y) ||
           ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopup) ||
           (ImGui::GetIO().WantCaptureMouse && ImGui::IsAnyMouseDown());
}

bool Side::has_keyboard() const {
    return ImGui::GetIO().WantTextInput || keyboard_ ||
           ImGui::IsPopupOpen("", ImGuiPopupFlags_AnyPopup);
}

bool Side::is_typing() const {
    return ImGui::GetIO().WantTextInput;
}

void Side::take_keyboard() {
    want_keyboard_ = keyboard_ = true;
    ImGui::GetIO().ConfigFlags |= ImGuiConfigFlags_NavEnableKeyboard;
}

void Side::give_keyboard() {
    drop_keyboard_ = true;
    keyboard_ = false;
    ImGui::GetIO().ConfigFlags &= ~ImGuiConfigFlags_NavEnableKeyboard;
}

void Side::draw_side(SideFrame& side) {
    const Area& area = side.bench.plan.side;
    if (area.empty()) return;
    ImGui::SetNextWindowPos({static_cast<float>(area.x), static_cast<float>(area.y)});
    ImGui::SetNextWindowSize({static_cast<float>(area.width), static_cast<float>(area.height)});
    if (want_keyboard_) ImGui::SetNextWindowFocus();
    ImGui::Begin("side",
                 nullptr,
                 bare_pane | ImGuiWindowFlags_NoFocusOnAppearing |
                     ImGuiWindowFlags_NoBringToFrontOnFocus | ImGuiWindowFlags_NoScrollWithMouse);
    draw_head(side);
    draw_asked(side);
    if (ImGui::BeginChild("sections",
                          {},
                          false,
                          ImGuiWindowFlags_NoFocusOnAppearing | ImGuiWindowFlags_NavFlattened)) {
        // The bar of the scroll takes its room whether it is needed or not, so that nothing jumps.
        const Mode mode = side.bench.mode;
        // Without a layout to account for, only its mistakes and its members can be of use.
        const bool empty = side.bench.piece.prototype() == nullptr;
        draw_mistakes(side);
        if (!empty) draw_ledger(side);
        if (!empty && mode == Mode::operate) draw_trial(side);
        if (!empty && mode == Mode::look) {
            draw_look(side);
            draw_size(side);
        }
        // What is being changed stands above what is said of it.
        if (mode == Mode::arrange) {
            draw_item(side);
            draw_layout_members(side);
        }
        if (!empty) draw_findings(side);
        if (!empty && mode == Mode::operate) {
            draw_updates(side);
            draw_events(side);
        }
        ImGui::Dummy({0, 8 * side.unit});
    }
    ImGui::EndChild();
    ImGui::End();
}

void Side::draw_handle(SideFrame& side) {
    const Area& area = side.bench.plan.handle;
    if (area.empty()) return;
    ImGui::SetNextWindowPos({static_cast<float>(area.x), static_cast<float>(area.y)});
    ImGui::SetNextWindowSize({static_cast<float>(area.width), static_cast<float>(area.height)});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowMinSize, {1, 1});
    if (ImGui::Begin("handle", nullptr, bare_pane | ImGuiWindowFlags_NoNav)) {
        const bool out = side.bench.plan.drawer;
        if (ImGui::Button(out ? "\xE2\x96\xB6" : "\xE2\x97\x80",
                          {static_cast<float>(area.width), static_cast<float>(area.height)}))
            side.bench.order(Order::side);
        tip(side, out ? "Push the side in (F9)" : "Draw the side out (F9)");
    }
    ImGui::End();
    ImGui::PopStyleVar(2);
}

void Side::draw_asked_alone(SideFrame& side) {
    const Bench& bench = side.bench;
    if (!bench.plan.side.empty() ||
        !(bench.leaving || bench.quarrel || bench.rescued || bench.notice))
        return;
    const float u = side.unit, edge = 12 * u;
    const float width = std::min(360 * u, static_cast<float>(bench.plan.window.width) - 2 * edge);
    ImGui::SetNextWindowPos(
        {static_cast<float>(bench.plan.window.width) - edge, edge}, ImGuiCond_Always, {1.0f, 0.0f});
    ImGui::SetNextWindowSizeConstraints({width, 0}, {width, 4000 * u});
    ImGui::PushStyleColor(ImGuiCol_WindowBg, ink(tint::raised));
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, u);
    if (ImGui::Begin("asked", nullptr, bare_pane | ImGuiWindowFlags_AlwaysAutoResize))
        draw_asked(side);
    asked_ = {static_cast<int>(ImGui::GetWindowPos().x),
              static_cast<int>(ImGui::GetWindowPos().y),
              static_cast<int>(ImGui::GetWindowWidth()),
              static_cast<int>(ImGui::GetWindowHeight())};
    ImGui::End();
    ImGui::PopStyleVar();
    ImGui::PopStyleColor();
}

void Side::prepare(Bench& bench) {
    ImGui_ImplSDL2_NewFrame();
    ImGui::NewFrame();
    if (drop_keyboard_) ImGui::SetWindowFocus(nullptr);
    SideFrame side{bench, type_, static_cast<float>(unit_)};
    draw_marks(side);
    draw_side(side);
    draw_handle(side);
    asked_ = {};
    draw_asked_alone(side);
    if (bench.help) draw_help(side);
    if (bench.card) draw_card(side);
    want_keyboard_ = drop_keyboard_ = false;
    ImGui::Render();
}

std::vector<Side::Layer> Side::layers() const {
    std::vector<Layer> all;
    const ImDrawData* data = ImGui::GetDrawData();
    if (data == nullptr) return all;
    for (int l = 0; l < data->CmdListsCount; ++l)
        all.push_back({fingerprint(*data->CmdLists[l]), covered(*data->CmdLists[l])});
    return all;
}

std::vector<Area> Side::changed() const {
    const std::vector<Layer> now = layers();
    std::vector<Area> parts;
    for (std::size_t i = 0; i < std::max(now.size(), seen_.size()); ++i) {
        const bool same = i < now.size() && i < seen_.size() && now[i].print == seen_[i].print;
        if (same) continue;
        if (i < now.size() && !now[i].area.empty()) parts.push_back(now[i].area);
        if (i < seen_.size() && !seen_[i].area.empty()) parts.push_back(seen_[i].area);
    }
    return parts;
}

void Side::draw(const Area& part) {
    if (const ImDrawData* data = ImGui::GetDrawData(); data != nullptr) brush_.draw(*data, part);
}

void Side::drawn() {
    seen_ = layers();
}

}  // namespace dialplate

#include "sim/desk/lettering.hpp"

#include "sim/desk/tints.hpp"

#include <algorithm>
#include <imgui.h>
#include <utility>
#include <vector>

namespace dialplate {
namespace {

struct Spot {
    int rect = 0;
    const Bitmap* cell = nullptr;
    int enlarged = 1;
};

/// A face of ours under ImGui's name: it makes one with a blank alone, which then gets our letters.
ImFont* add_face(ImFontAtlas& atlas, const Typeface& face, std::vector<Spot>& spots) {
    static const ImWchar blank_alone[] = {' ', ' ', 0};
    ImFontConfig config;
    config.SizePixels = static_cast<float>(face.height());
    config.GlyphRanges = blank_alone;
    config.PixelSnapH = true;
    ImFont* font = atlas.AddFontDefault(&config);
    for (const auto& [code, cell] : face.letters()) {
        const int width = cell.width * face.enlarged(), height = cell.height * face.enlarged();
        const int rect = atlas.AddCustomRectFontGlyph(font,
                                                      static_cast<ImWchar>(code),
                                                      std::max(width, 1),
                                                      std::max(height, 1),
                                                      static_cast<float>(width));
        spots.push_back({rect, &cell, face.enlarged()});
    }
    return font;
}

ImVec4 colour(Colour rgb, double part = 1.0) {
    return ImGui::ColorConvertU32ToFloat4(ink(rgb, part));
}

}  // namespace

unsigned ink(Colour rgb, double part) {
    return IM_COL32(
        (rgb >> 16) & 255u, (rgb >> 8) & 255u, rgb & 255u, static_cast<int>(part * 255.0 + 0.5));
}

Lettering letter(const Faces& faces) {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    std::vector<Spot> spots;
    Lettering lettering;
    lettering.words = add_face(atlas, faces.words, spots);
    lettering.small = add_face(atlas, faces.small, spots);
    lettering.strong = add_face(atlas, faces.large, spots);
    atlas.Build();

    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    atlas.GetTexDataAsRGBA32(&pixels, &width, &height);
    auto* texels = reinterpret_cast<ImU32*>(pixels);
    for (const Spot& spot : spots) {
        const ImFontAtlasCustomRect& rect = *atlas.GetCustomRectByIndex(spot.rect);
        for (int y = 0; y < spot.cell->height * spot.enlarged; ++y)
            for (int x = 0; x < spot.cell->width * spot.enlarged; ++x)
                texels[(rect.Y + y) * width + rect.X + x] = IM_COL32(
                    255, 255, 255, spot.cell->ink(x / spot.enlarged, y / spot.enlarged) ? 255 : 0);
    }
    const std::pair<ImFont*, const Typeface*> rows[] = {{lettering.words, &faces.words},
                                                        {lettering.small, &faces.small},
                                                        {lettering.strong, &faces.large}};
    for (const auto& [font, face] : rows) {
        font->Ascent = static_cast<float>(face->ascent());
        font->Descent = static_cast<float>(face->ascent() - face->height());
        font->FontSize = static_cast<float>(face->height());
        font->FallbackChar = '?';
        font->BuildLookupTable();
    }
    return lettering;
}

void dress(int unit) {
    ImGuiStyle style;
    const float u = static_cast<float>(unit);
    style.WindowPadding = {14 * u, 10 * u};
    style.FramePadding = {6 * u, 3 * u};
    style.CellPadding = {4 * u, 2 * u};
    style.ItemSpacing = {8 * u, 5 * u};
    style.ItemInnerSpacing = {6 * u, 4 * u};
    style.IndentSpacing = 12 * u;
    style.ScrollbarSize = 9 * u;
    style.GrabMinSize = 9 * u;
    style.WindowBorderSize = 0;
    style.ChildBorderSize = 0;
    style.PopupBorderSize = u;
    style.FrameBorderSize = 0;
    style.WindowRounding = 0;
    style.ChildRounding = 0;
    style.PopupRounding = 3 * u;
    style.FrameRounding = 2 * u;
    style.GrabRounding = 2 * u;
    style.ScrollbarRounding = 2 * u;
    style.SelectableTextAlign = {0, 0.5f};
    // Edges from the atlas's texture would be smoothed between texels; nearest texels leave them ragged.
    style.AntiAliasedLinesUseTex = false;

    ImVec4* c = style.Colors;
    const ImVec4 none{0, 0, 0, 0};
    for (int i = 0; i < ImGuiCol_COUNT; ++i)
        c[i] = none;
    c[ImGuiCol_Text] = colour(tint::engraved);
    c[ImGuiCol_TextDisabled] = colour(tint::quiet);
    c[ImGuiCol_WindowBg] = colour(tint::side);
    c[ImGuiCol_PopupBg] = colour(tint::raised);
    c[ImGuiCol_Border] = colour(tint::rule);
    c[ImGuiCol_FrameBg] = colour(tint::well);
    c[ImGuiCol_FrameBgHovered] = colour(tint::well_lit);
    c[ImGuiCol_FrameBgActive] = colour(tint::well_lit);
    c[ImGuiCol_ScrollbarGrab] = colour(tint::rule, 0.45);
    c[ImGuiCol_ScrollbarGrabHovered] = colour(tint::rule, 0.8);
    c[ImGuiCol_ScrollbarGrabActive] = colour(tint::rule);
    c[ImGuiCol_CheckMark] = colour(tint::lit);
    c[ImGuiCol_SliderGrab] = colour(tint::quiet);
    c[ImGuiCol_SliderGrabActive] = colour(tint::lit);
    c[ImGuiCol_Button] = colour(tint::button);
    c[ImGuiCol_ButtonHovered] = colour(tint::button_lit);
    c[ImGuiCol_ButtonActive] = colour(tint::rule);
    c[ImGuiCol_Header] = colour(tint::button);
    c[ImGuiCol_HeaderHovered] = colour(tint::button_lit);
    c[ImGuiCol_HeaderActive] = colour(tint::button_lit);
    c[ImGuiCol_Separator] = colour(tint::strip_line);
    c[ImGuiCol_TextSelectedBg] = colour(tint::lit, 0.35);
    c[ImGuiCol_NavHighlight] = colour(tint::lit);
    c[ImGuiCol_ModalWindowDimBg] = colour(tint::bench, 0.6);
    ImGui::GetStyle() = style;
}

}  // namespace dialplate

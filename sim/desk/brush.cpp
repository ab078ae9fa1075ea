#include "sim/desk/brush.hpp"

#include <SDL.h>

#include <algorithm>
#include <cstring>
#include <imgui.h>

namespace dialplate {
namespace {

/// Eight bytes at a time; multiplication and a fold mix them (constants: golden ratio, 64 bits).
void mix_in(std::uint64_t& number, const void* bytes, std::size_t size) {
    const auto* at = static_cast<const unsigned char*>(bytes);
    for (; size > 0;) {
        const std::size_t taken = std::min<std::size_t>(size, 8);
        std::uint64_t word = 0;
        std::memcpy(&word, at, taken);
        number = (number ^ word) * 0x9E3779B97F4A7C15u;
        number ^= number >> 29;
        at += taken;
        size -= taken;
    }
}

}  // namespace

std::uint64_t fingerprint(const ImDrawList& list) {
    std::uint64_t number = 1;
    mix_in(number,
           list.VtxBuffer.Data,
           static_cast<std::size_t>(list.VtxBuffer.Size) * sizeof(ImDrawVert));
    for (const ImDrawCmd& command : list.CmdBuffer) {
        mix_in(number, &command.ClipRect, sizeof command.ClipRect);
        mix_in(number, &command.ElemCount, sizeof command.ElemCount);
    }
    return number;
}

std::string Brush::hold(Canvas& canvas) {
    atlas_.reset();
    renderer_.reset();
    surface_.reset(SDL_CreateRGBSurfaceWithFormatFrom(canvas.pixels(),
                                                      canvas.width(),
                                                      canvas.height(),
                                                      32,
                                                      canvas.width() * 4,
                                                      SDL_PIXELFORMAT_RGB888));
    if (surface_) renderer_.reset(SDL_CreateSoftwareRenderer(surface_.get()));
    if (!renderer_) return SDL_GetError();

    unsigned char* pixels = nullptr;
    int width = 0, height = 0;
    ImGui::GetIO().Fonts->GetTexDataAsRGBA32(&pixels, &width, &height);
    atlas_.reset(SDL_CreateTexture(
        renderer_.get(), SDL_PIXELFORMAT_ABGR8888, SDL_TEXTUREACCESS_STATIC, width, height));
    if (!atlas_) return SDL_GetError();
    SDL_UpdateTexture(atlas_.get(), nullptr, pixels, 4 * width);
    SDL_SetTextureBlendMode(atlas_.get(), SDL_BLENDMODE_BLEND);
    SDL_SetTextureScaleMode(atlas_.get(), SDL_ScaleModeNearest);
    ImGui::GetIO().Fonts->SetTexID(atlas_.get());
    return {};
}

void Brush::draw(const ImDrawData& data, const Area& part) {
    SDL_Renderer* renderer = renderer_.get();
    for (int l = 0; l < data.CmdListsCount; ++l) {
        const ImDrawList& list = *data.CmdLists[l];
        for (const ImDrawCmd& command : list.CmdBuffer) {
            SDL_Rect clip{static_cast<int>(command.ClipRect.x - data.DisplayPos.x),
                          static_cast<int>(command.ClipRect.y - data.DisplayPos.y),
                          static_cast<int>(command.ClipRect.z - command.ClipRect.x),
                          static_cast<int>(command.ClipRect.w - command.ClipRect.y)};
            const Area seen = common_part(part, {0, 0, surface_->w, surface_->h});
            const SDL_Rect all{seen.x, seen.y, seen.width, seen.height};
            if (SDL_IntersectRect(&clip, &all, &clip) == SDL_FALSE) continue;
            SDL_RenderSetClipRect(renderer, &clip);
            const ImDrawVert* corners = list.VtxBuffer.Data + command.VtxOffset;
            constexpr int stride = sizeof(ImDrawVert);
            // ImU32 holds red in its lowest byte, as SDL_Color does in memory on a little-endian machine.
            SDL_RenderGeometryRaw(renderer,
                                  static_cast<SDL_Texture*>(command.GetTexID()),
                                  &corners->pos.x,
                                  stride,
                                  reinterpret_cast<const SDL_Color*>(&corners->col),
                                  stride,
                                  &corners->uv.x,
                                  stride,
                                  list.VtxBuffer.Size - static_cast<int>(command.VtxOffset),
                                  list.IdxBuffer.Data + command.IdxOffset,
                                  static_cast<int>(command.ElemCount),
                                  sizeof(ImDrawIdx));
        }
    }
    SDL_RenderSetClipRect(renderer, nullptr);
    SDL_RenderFlush(renderer);
}

}  // namespace dialplate

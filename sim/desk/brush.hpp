// Draws what Dear ImGui prepared onto a canvas: its triangles go through SDL's software renderer. The same on
// every screen, with or without a graphics card, and on none at all.
#pragma once

#include "sim/desk/canvas.hpp"

#include <SDL_render.h>

#include <cstdint>
#include <memory>
#include <string>

struct ImDrawData;
struct ImDrawList;

namespace dialplate {

class Brush {
public:
    /// Begins to draw on a canvas, which must outlive the next call. The atlas of faces must have been built.
    /// @return An empty reason, or why it cannot.
    std::string hold(Canvas& canvas);
    /// As far as it lies in `part`.
    void draw(const ImDrawData& data, const Area& part);

private:
    struct Gone {
        void operator()(SDL_Surface* surface) const { SDL_FreeSurface(surface); }
        void operator()(SDL_Renderer* renderer) const { SDL_DestroyRenderer(renderer); }
        void operator()(SDL_Texture* texture) const { SDL_DestroyTexture(texture); }
    };
    // In this order: a texture goes before its renderer, that before its surface.
    std::unique_ptr<SDL_Surface, Gone> surface_;
    std::unique_ptr<SDL_Renderer, Gone> renderer_;
    std::unique_ptr<SDL_Texture, Gone> atlas_;
};

/// A number that two lists share only if they look the same: of all corners, colours and clips.
std::uint64_t fingerprint(const ImDrawList& list);

}  // namespace dialplate

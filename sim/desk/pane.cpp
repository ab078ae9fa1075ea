#include "sim/desk/pane.hpp"

#include <SDL.h>

#include <algorithm>

namespace dialplate {

Pane::~Pane() {
    if (window_ != nullptr) SDL_DestroyWindow(window_);
    if (joined_) SDL_QuitSubSystem(SDL_INIT_VIDEO);
}

std::string Pane::join() {
    // The desktop's compositor stays on, and the first click into the window is already a touch.
    SDL_SetHint(SDL_HINT_VIDEO_X11_NET_WM_BYPASS_COMPOSITOR, "0");
    SDL_SetHint(SDL_HINT_MOUSE_FOCUS_CLICKTHROUGH, "1");
    SDL_SetMainReady();
    if (SDL_InitSubSystem(SDL_INIT_VIDEO) != 0) return SDL_GetError();
    joined_ = true;
    // Under X the pixels go through shared memory: quicker to start than a detour by OpenGL. Other
    // screens may know no other way than that detour, so it is left to SDL there.
    if (std::string{SDL_GetCurrentVideoDriver()} == "x11")
        SDL_SetHint(SDL_HINT_FRAMEBUFFER_ACCELERATION, "0");
    return {};
}

WindowSize Pane::room() const {
    SDL_Rect bounds{};
    if (SDL_GetDisplayUsableBounds(0, &bounds) != 0) return {1280, 800};
    return {bounds.w, bounds.h};
}

std::string Pane::open(WindowSize size) {
    window_ = SDL_CreateWindow("dialplate",
                               SDL_WINDOWPOS_CENTERED,
                               SDL_WINDOWPOS_CENTERED,
                               size.width,
                               size.height,
                               SDL_WINDOW_RESIZABLE);
    if (window_ == nullptr || SDL_GetWindowSurface(window_) == nullptr) return SDL_GetError();
    SDL_SetWindowMinimumSize(window_, 420, 300);
    return {};
}

void Pane::entitle(const std::string& title) {
    SDL_SetWindowTitle(window_, title.c_str());
}

WindowSize Pane::size() const {
    WindowSize size;
    SDL_GetWindowSize(window_, &size.width, &size.height);
    return size;
}

Monitor Pane::monitor() const {
    const int index = std::max(SDL_GetWindowDisplayIndex(window_), 0);
    Monitor monitor;
    if (const char* name = SDL_GetDisplayName(index); name != nullptr) monitor.name = name;
    SDL_Rect bounds{};
    if (SDL_GetDisplayBounds(index, &bounds) == 0) {
        monitor.width = bounds.w;
        monitor.height = bounds.h;
    }
    float across = 0;
    if (SDL_GetDisplayDPI(index, nullptr, &across, nullptr) == 0)
        monitor.dots_per_inch = static_cast<double>(across);
    return monitor;
}

void Pane::show(Canvas& canvas, const std::vector<Area>& parts) {
    SDL_Surface* screen = SDL_GetWindowSurface(window_);
    if (screen == nullptr || parts.empty()) return;
    SDL_Surface* from = SDL_CreateRGBSurfaceWithFormatFrom(canvas.pixels(),
                                                           canvas.width(),
                                                           canvas.height(),
                                                           32,
                                                           canvas.width() * 4,
                                                           SDL_PIXELFORMAT_RGB888);
    if (from == nullptr) return;
    std::vector<SDL_Rect> rects;
    for (const Area& part : parts) {
        const Area seen =
            common_part(common_part(part, canvas.all()), {0, 0, screen->w, screen->h});
        if (seen.empty()) continue;
        SDL_Rect rect{seen.x, seen.y, seen.width, seen.height};
        SDL_Rect there = rect;
        SDL_BlitSurface(from, &rect, screen, &there);
        rects.push_back(rect);
    }
    SDL_FreeSurface(from);
    if (!rects.empty())
        SDL_UpdateWindowSurfaceRects(window_, rects.data(), static_cast<int>(rects.size()));
}

}  // namespace dialplate

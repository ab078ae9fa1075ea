// The window of the operating system: a surface in memory that is sent to the screen in pieces. No
// graphics card is asked for, so that the dummy video driver and a bare X server do just as well.
#pragma once

#include "sim/desk/canvas.hpp"
#include "sim/desk/plan.hpp"
#include "sim/desk/screen.hpp"

#include <memory>
#include <string>
#include <vector>

struct SDL_Window;

namespace dialplate {

class Pane {
public:
    Pane() = default;
    ~Pane();
    Pane(const Pane&) = delete;
    Pane& operator=(const Pane&) = delete;

    /// Joins the screen. @return An empty reason, or why there is none.
    std::string join();
    /// Room for windows on the first screen. @pre join() was successful.
    [[nodiscard]] WindowSize room() const;
    /// @return An empty reason, or why there is no window.
    std::string open(WindowSize size);
    void entitle(const std::string& title);

    [[nodiscard]] SDL_Window* window() const { return window_; }
    [[nodiscard]] WindowSize size() const;
    /// The monitor that the window is on, for the most part.
    [[nodiscard]] Monitor monitor() const;
    /// Sends parts of a canvas of the window's size to the screen.
    void show(Canvas& canvas, const std::vector<Area>& parts);

private:
    bool joined_ = false;
    SDL_Window* window_ = nullptr;
};

}  // namespace dialplate

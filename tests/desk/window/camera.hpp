// Photographs of an X server's screen.
#pragma once

#include "sim/desk/canvas.hpp"

#include <memory>
#include <string>
#include <vector>

namespace dialplate {

/// What the screen showed at one moment.
struct Photograph {
    int width = 0, height = 0;
    std::vector<Colour>
        pixels;  ///< Row-major; what stands above the colour's 24 bits means nothing.
    [[nodiscard]] Colour at(int x, int y) const;
    /// As a PNG. @return Whether it could be written.
    [[nodiscard]] bool save(const std::string& file) const;
};

/// A connection to an X server on this machine, which shares its pictures by memory. The server must outlive it.
class Camera {
public:
    /// @param display  Value of DISPLAY.
    /// @throws std::runtime_error without a server there, or when its screen has not 24 bits a pixel.
    explicit Camera(const std::string& display);
    ~Camera();

    /// The whole screen as it is between two requests of a program: never half of one that draws.
    [[nodiscard]] Photograph take() const;

private:
    struct Film;  ///< Xlib's; its headers have macros named None, Bool and Status.
    std::unique_ptr<Film> film_;
};

}  // namespace dialplate

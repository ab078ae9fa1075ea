// The bus that the engine draws on when it runs on the PC: turns windows and runs of a colour into the
// very bytes that a driver in ui/mcu sends, and hands them to the controller model.
#pragma once

#include "sim/display/controller.hpp"

#include <cstdint>

namespace dialplate {

class Wire {
public:
    /// @param turn  0, 90, 180, 270.
    Wire(Controller& controller, const Display& display, int turn);

    /// Brings the controller up: sleep out, pixel format, address mode of the turn, display on.
    void start();

    /// Opens a window in glass coordinates (turned); `width` and `height` at least 1. 11 bytes.
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t width, std::uint16_t height);
    /// Sends `colour` for the next `count` pixels of the window, row by row.
    void push(std::uint16_t colour, std::uint16_t count);

private:
    Controller* controller_;
    TurnMode mode_;
    int bytes_per_pixel_;
};

}  // namespace dialplate

// The bus that the engine draws on when it runs on the PC: turns windows and runs of a colour into
// the very bytes that a driver in ui/mcu sends, and hands them to the controller model.
#pragma once

#include "sim/display/controller.hpp"
#include "sim/display/pixel_format.hpp"

#include <cstdint>
#include <functional>
#include <utility>

namespace dialplate {

class Wire {
public:
    /// Hears every byte in the order of the bus, for a comparison with a microcontroller's.
    using Observer = std::function<void(bool is_command, std::uint8_t byte)>;

    /// @param turn  0, 90, 180, 270.
    /// @param bus   On `parallel8` every part takes two bytes a pixel, whatever its serial bus
    /// needs (standards BUS-09). Build the controller with the same.
    Wire(Controller& controller, const Display& display, int turn, BusKind bus = BusKind::spi);

    /// Brings the controller up: soft reset, sleep out, pixel format, address mode of the turn,
    /// inversion if the panel needs it, display on. The waits that a driver must keep (standards
    /// BUS-05: 5 ms after reset and after sleep out) carry no bytes and are not here.
    void start();

    /// Opens a window in glass coordinates (turned); `width` and `height` at least 1. 11 bytes:
    /// 2A x x' 2B y y' 2C, each end 16 bits, high byte first, inclusive (standards BUS-04).
    void window(std::uint16_t x, std::uint16_t y, std::uint16_t width, std::uint16_t height);
    /// Sends `colour` for the next `count` pixels of the window, row by row; high byte first.
    void push(std::uint16_t colour, std::uint16_t count);

    /// From now on every byte is also told to `observer`; an empty one ends that. Runs of pixels
    /// go to the controller byte by byte while somebody listens.
    void observe(Observer observer) { observer_ = std::move(observer); }

private:
    void command(std::uint8_t code);
    void data(std::uint8_t byte);
    void range(int first, int count);

    Controller* controller_;
    TurnMode mode_;
    bool inverted_;
    int bytes_per_pixel_;
    Observer observer_;
};

}  // namespace dialplate

// The display controller, fed with bus traffic only.
//
// Modelled: the MIPI DCS commands that a driver for a small TFT sends (standards BUS-01..03): window,
// memory write and continue, address mode, pixel format, sleep, display on/off, inversion, reset, nop,
// scroll and partial area (parameters taken, picture unaffected). Not modelled: reading back, gamma and
// power registers of the makers (their codes and parameters are counted as unknown commands), timing.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstdint>
#include <vector>

namespace dialplate {

/// What a driver did wrong, and how much it did.
struct BusCounters {
    std::int64_t bytes = 0;          ///< Commands and parameters and pixels.
    std::int64_t windows = 0;        ///< Memory writes begun (0x2C).
    std::int64_t pixels = 0;
    std::int64_t pixels_twice = 0;   ///< Written again within one update.
    std::int64_t unknown_commands = 0;
    std::int64_t bad_windows = 0;    ///< Start after end, outside the memory, or a pixel past the end.
    std::int64_t stray_parameters = 0;
};

/// A rectangle in the order it was sent, for showing what an update touched. Glass coordinates.
struct SentWindow {
    Box box;
    std::int64_t pixels = 0;
};

class Controller {
public:
    explicit Controller(const Display& display);

    void command(std::uint8_t code);  ///< One byte with D/C low.
    void data(std::uint8_t byte);     ///< One byte with D/C high.

    /// Begins a new update: the next write of any pixel is its first.
    void begin_update();
    [[nodiscard]] const BusCounters& counters() const { return counters_; }

    /// What the reader sees: glass pixels as RGB565, row-major, width x height of the turned glass.
    /// Black while the display is off or asleep.
    /// @param turn  0, 90, 180, 270: how the module is mounted.
    [[nodiscard]] std::vector<std::uint16_t> glass(int turn) const;

    [[nodiscard]] bool on() const { return on_ && awake_; }
    [[nodiscard]] std::uint8_t address_mode() const { return address_mode_; }

private:
    Display display_;
    BusCounters counters_;
    std::uint8_t address_mode_ = 0;
    bool on_ = false, awake_ = false;
    // The room that owns this file adds what it needs.
};

}  // namespace dialplate

// A resistive sheet behind a 12-bit serial converter, at four pins of a board and the pen line.
//
// Modelled: the frame of 24 clocks (start bit, channel, power bits; one clock, then twelve bits at falling
// clocks, highest first), X, Y and the two pressure readings of a sheet whose plates and contact have
// resistances, the pen line (low while touched, unless the converter stays on), noise on every sample, the
// first sample after a change of channel off by what has not settled yet. Not modelled: the analogue
// course of settling, supply and temperature channels, 8-bit mode, clock limits.
// Compared with: the converters' data sheets (ADS7846 class), from memory.
#pragma once

#include "sim/prove/board.hpp"

#include <cstdint>
#include <random>

namespace dialplate {

struct TouchWiring {
    PinPlace clock{'D', 2}, in{'D', 3}, out{'D', 5}, select{'D', 6}, pen{'D', 7};
};

struct TouchSheet {
    double plate_ohm = 400.0;    ///< x plate.
    double contact_ohm = 300.0;  ///< Of a firm press.
    double noise = 0.0;          ///< Standard deviation, counts (standards RES-13: 2..8).
    double unsettled = 0.0;  ///< Share of the way from the last channel's reading that the first
                             ///< sample of the next still lacks, 0..1.
    std::uint32_t seed = 1;
};

class TouchChip {
public:
    /// @pre `board` has been loaded, and outlives this.
    TouchChip(Board& board, const TouchWiring& wiring, const TouchSheet& sheet);
    TouchChip(const TouchChip&) = delete;
    TouchChip& operator=(const TouchChip&) = delete;

    /// @param x, y  Counts as the converter gives them without noise, 0..4095.
    void press(double x, double y);
    void lift();
    [[nodiscard]] std::int64_t conversions() const { return conversions_; }

private:
    void clock_moved(bool level);
    void select_moved(bool level);
    void show_pen();
    [[nodiscard]] double reading(unsigned channel) const;

    Board* board_;
    TouchWiring wiring_;
    TouchSheet sheet_;
    std::mt19937 random_;
    bool pressed_ = false;
    double x_ = 0, y_ = 0;
    bool selected_ = false, converter_on_ = false;
    int clocks_ = 0;  // Rising clocks since the start bit; 0: waiting for it.
    unsigned control_ = 0, last_channel_ = 8;
    double last_reading_ = 0;
    unsigned result_ = 0;
    std::int64_t conversions_ = 0;
};

}  // namespace dialplate

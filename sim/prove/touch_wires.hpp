// A resistive sheet of four wires at the pins of a board: what each wire shows follows from which pins
// drive, as in the real sheet.
//
// Modelled: two plates, a contact between them, the voltage at a wire that carries no current, for the
// three ways of driving that a reading uses. Not modelled: the output resistance of the pins (some 25 ohm,
// which would narrow the range), settling, pull-ups.
#pragma once

#include "sim/prove/board.hpp"

namespace dialplate {

struct TouchWires {
    PinPlace x_plus{'C', 0}, x_minus{'C', 1}, y_plus{'C', 2}, y_minus{'C', 3};
    int x_minus_channel = 1, y_plus_channel = 2;
    double x_ohm = 400.0, y_ohm = 600.0, contact_ohm = 300.0;
};

/// Wires a sheet to the converter inputs of a board.
class WiredSheet {
public:
    /// @pre `board` has been loaded, and outlives this.
    WiredSheet(Board& board, const TouchWires& wires);
    WiredSheet(const WiredSheet&) = delete;
    WiredSheet& operator=(const WiredSheet&) = delete;

    /// @param x, y  Share of the way from the minus to the plus end, 0..1.
    void press(double x, double y);
    void lift() { pressed_ = false; }

private:
    [[nodiscard]] int millivolts(int channel) const;
    [[nodiscard]] bool high(PinPlace pin) const {
        return board_->is_output(pin) && board_->output(pin);
    }
    [[nodiscard]] bool low(PinPlace pin) const {
        return board_->is_output(pin) && !board_->output(pin);
    }

    Board* board_;
    TouchWires wires_;
    bool pressed_ = false;
    double x_ = 0, y_ = 0;
};

}  // namespace dialplate

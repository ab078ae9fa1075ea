// The wiring that the emitted code starts from; the author changes it in wiring.hpp.
#pragma once

#include "sim/layout/layout.hpp"

#include <optional>
#include <string>

namespace dialplate {

/// A pin of an AVR: port letter and bit, PB5 is {'B', 5}; and what an Arduino board calls it.
struct AvrPin {
    char port = 'B';
    int bit = 0;
    const char* arduino = "";
};

/// The eight data lines of a parallel bus: those of `low_mask` at the port `low`, each at its own bit, the
/// others at the port `high`; one whole port when both are the same.
struct DataLines {
    char low = 'D', high = 'D';
    int low_mask = 0xFF;
    const char* arduino = "";
};

struct DisplayPins {
    AvrPin data_or_command, select;
    AvrPin reset;
    AvrPin clock, data;  ///< Serial buses: where the microcontroller has them.
    AvrPin write, read;  ///< parallel8.
    DataLines lines;     ///< parallel8.
};

/// A 12-bit serial touch converter on four pins and its pen line.
struct TouchPins {
    AvrPin clock, in, out, select, pen;
};

struct Pins {
    DisplayPins display;
    TouchPins touch;
    bool known = true;  ///< False: another part's, in want of those of this one.
};

/// Empty for a processor that is no classic AVR.
std::optional<Pins> usual_pins(const Mcu& mcu, BusKind bus);

}  // namespace dialplate

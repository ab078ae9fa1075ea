// One digit of a readout becomes every other one, 90 pairs, on a simulated ATmega328P at 16 MHz with the serial bus at
// 8 MHz. A readout of one cell, so that little else is in the time.
#pragma once

#include "tests/firmware/timed_run.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// A readout of one digit.
struct OneDigit {
    std::string face;          ///< Members of the face, as in a layout.
    std::string readout = {};  ///< More members of the readout, with a comma before each.
    TimedDriver driver = {"spi_timed", "timed", BusKind::spi_timed, 2};  ///< Of a serial bus.
};

struct DigitPairs {
    std::string packing;
    bool by_what_differs = false;
    int columns = 0, rows = 0;   ///< Of the cell, px.
    long long bytes = 0;         ///< Of the face, in flash.
    std::vector<double> cycles;  ///< Of the whole update, sorted.
    std::string trouble;         ///< Why there are none; empty: nothing.

    [[nodiscard]] double median() const;
};

/// @param tree  Of the sources.
DigitPairs time_digit_pairs(const OneDigit& digit, const std::filesystem::path& tree);

}  // namespace dialplate

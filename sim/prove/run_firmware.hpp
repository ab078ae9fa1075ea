// Any firmware for an AVR on the bench, without a layout: what it does on the bus in a given time.
#pragma once

#include "sim/prove/board.hpp"

#include <string>

namespace dialplate {

struct FirmwareRun {
    std::string elf;
    BoardOptions board;
    double for_ms = 1000.0;  ///< Simulated.
    bool json = false;
};

/// Runs and reports on standard output.
/// @return Exit status: 0 no fault, 1 faults or a crash, 2 the file cannot be loaded.
int run_firmware(const FirmwareRun& run);

}  // namespace dialplate

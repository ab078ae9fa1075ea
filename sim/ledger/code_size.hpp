// How much program the engine and a driver are, from sizes that were measured by compiling them.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/prototype/parts_used.hpp"

namespace dialplate {

/// Flash of the engine with just these parts.
CodeSize engine_size(PartSet parts, const Mcu& mcu);

/// Flash of the bus driver with the start-up of the display.
/// @param parts  Of the engine: some drivers decide glyphs in `context` by themselves, in place of the engine.
CodeSize driver_size(const Layout& layout, PartSet parts);

/// Flash of reading the touch sheet through a serial converter, with the calibration, as the example does it.
CodeSize touch_size(const Mcu& mcu);

/// RAM that the engine has besides the values and what is shown: its own state, and tables that the
/// compiler keeps in RAM.
Bytes engine_state(const Mcu& mcu);

/// Greatest depth of the stack below the call of the engine's service function.
CodeSize stack_size(PartSet parts, const Mcu& mcu);

}  // namespace dialplate

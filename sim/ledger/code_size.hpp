// How much program the engine and a driver are, from sizes that were measured by compiling them.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/ledger/size_terms.hpp"
#include "sim/prototype/parts_used.hpp"

namespace dialplate {

/// What is linked for a layout with these parts.
DisplayProgram display_program(const Layout& layout, PartSet parts);

/// Flash of the engine with just the program's parts. It links less with a driver that decides glyphs itself.
CodeSize engine_size(DisplayProgram program, const Mcu& mcu);

/// Flash of the bus driver with the start-up of the display. @pre The program has a bus.
CodeSize driver_size(const DisplayProgram& program, const Mcu& mcu);

/// Flash of reading the touch sheet through a serial converter, with the calibration, as the example does it; 0
/// if the program does not.
CodeSize touch_size(const DisplayProgram& program, const Mcu& mcu);

/// RAM that the engine has besides the values and what is shown: its own state, and tables that the
/// compiler keeps in RAM.
Bytes engine_state(const Mcu& mcu);

/// Greatest depth of the stack below the call of the engine's service function.
CodeSize stack_size(const DisplayProgram& program, const Mcu& mcu);

}  // namespace dialplate

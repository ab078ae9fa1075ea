// How much program the engine and a driver are, from sizes that were measured by compiling them.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/ledger.hpp"
#include "sim/ledger/size_terms.hpp"
#include "sim/prototype/parts_used.hpp"

namespace dialplate {

/// What is linked for a layout.
/// @pre `built` was made from `layout`.
DisplayProgram display_program(const Layout& layout, const BuiltImage& built);

/// Flash of the engine with just the program's parts. It links less with a driver that decides glyphs itself.
CodeSize engine_size(DisplayProgram program, const Mcu& mcu);

/// Flash of the bus driver with the start-up of the display. @pre The program has a bus.
CodeSize driver_size(const DisplayProgram& program, const Mcu& mcu);

/// Flash of reading the touch sheet through a serial converter, with the calibration, as the example does it; 0
/// if the program does not.
CodeSize touch_size(const DisplayProgram& program, const Mcu& mcu);

/// RAM that the engine has besides the values and what is shown: its own state, and tables that the
/// compiler keeps in RAM; and what reading the touch sheet keeps.
Bytes engine_state(const DisplayProgram& program, const Mcu& mcu);

/// Greatest depth of the stack from the call of the engine's service function on, as it is expected.
CodeSize stack_size(const DisplayProgram& program, const Mcu& mcu);

/// What is to be kept free besides: by so much at most such a prediction was too low.
Bytes stack_margin(const Mcu& mcu);

}  // namespace dialplate

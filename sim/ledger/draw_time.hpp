// How long the microcontroller is busy with what was sent: the bus, and what the engine does besides.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/ledger/events.hpp"
#include "sim/ledger/ledger.hpp"

namespace dialplate {

/// Fills in bytes, cycles, times and their standing.
EventTime timed(const Happening& happening, const Layout& layout);

}  // namespace dialplate

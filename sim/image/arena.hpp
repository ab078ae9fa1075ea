// How many bytes of memory the engine needs to remember what the glass shows.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate {

/// The parts of the engine (ui/parts.hpp) that decide how much it remembers of an item.
struct ShownParts {
    bool tuning_digit = true;  ///< A readout remembers the digit that is marked.
    bool peak = true;          ///< A meter remembers its peak.
};

/// Those that a layout uses, and the firmware for it therefore has.
ShownParts shown_parts(const Layout& layout);

/// Bytes that an engine with these parts remembers of an item: as `shown_bytes` of ui/readout.hpp, box.hpp,
/// meter.hpp and scale.hpp.
int shown_bytes(const Item& item, ShownParts parts);

}  // namespace dialplate

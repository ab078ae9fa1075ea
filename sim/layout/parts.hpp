// Display modules and microcontrollers, from layouts/parts/ or written out in a layout.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/layout/mistakes.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

struct Node;

/// One display module from its object; every mistake is reported.
Display display_from(const Node& node, const std::string& pointer, Mistakes& mistakes);
/// One microcontroller from its object; every mistake is reported.
Mcu mcu_from(const Node& node, const std::string& pointer, Mistakes& mistakes);

/// Parts of one kind: those of `parts/` beside the layout, then the project's own.
template <class Part>
struct Shelf {
    std::vector<Part> parts;
    bool readable = true;  ///< False: a part file is missing or broken, which has been reported.
};

/// Reads displays.json. A broken part file is reported under its own name, with its own places.
Shelf<Display> load_displays(const std::string& directory, std::vector<Finding>& findings);
/// Reads mcus.json likewise.
Shelf<Mcu> load_mcus(const std::string& directory, std::vector<Finding>& findings);

}  // namespace dialplate

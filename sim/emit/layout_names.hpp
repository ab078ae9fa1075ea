// What the values, choices, keys and pages of a layout are called in the emitted code.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <string>
#include <vector>

namespace dialplate {

struct LayoutNames {
    std::vector<std::string> values;                ///< By ValueId.
    std::vector<std::vector<std::string>> choices;  ///< Of each value; unique among all values.
    std::vector<std::string> keys;                  ///< By key number.
    std::vector<std::string> pages, palettes;
    std::string sketch;  ///< From the title; fit for a file.
};

LayoutNames layout_names(const Layout& layout, const BuiltImage& built);

/// The keys of all pages in the order of their numbers.
std::vector<const Key*> keys_by_number(const Layout& layout, const BuiltImage& built);

}  // namespace dialplate

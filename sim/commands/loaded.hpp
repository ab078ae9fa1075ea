// A layout brought to the point where commands begin: read, and its image built.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

struct Loaded {
    Layout layout;
    BuiltImage built;
    std::vector<Finding> findings;  ///< Of reading and building; none of severity `error`.
};

/// Reads a layout file ("-": standard input) and builds its image. What is wrong with it is said on
/// standard error.
/// @return Empty when there is an error.
std::optional<Loaded> load_and_build(const std::string& file);

}  // namespace dialplate

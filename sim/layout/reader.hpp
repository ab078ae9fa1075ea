// From the bytes of a layout document (layout.md) to a Layout, or to the list of everything that is wrong
// with it.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

struct Reading {
    std::optional<Layout> layout;   ///< Present exactly when no finding has severity `error`.
    std::vector<Finding> findings;  ///< Sorted by place.
};

/// Reads a layout from memory.
/// @param file       Name for messages.
/// @param directory  Where `parts/`, pictures and fonts named in it are looked up.
Reading read_layout(std::string_view text, const std::string& file, const std::string& directory);

/// Reads a layout file; "-" is standard input. A missing, unreadable, empty or over-large file (more
/// than 4 MiB) is a finding like any other.
Reading load_layout(const std::string& file);

/// Where a file named in a layout is: beside the layout, then in the project's fonts/ or layouts/ folder,
/// or as an absolute path; a bare font name also among the fonts installed on the system. Empty when
/// there is none.
std::string find_file(const std::string& directory, const std::string& name);

}  // namespace dialplate

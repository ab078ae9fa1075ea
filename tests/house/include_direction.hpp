// Reads every #include of the tree and says which ones point the wrong way: the floors of the house, as
// DEVELOPERS.md draws them, made into a table.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {

/// An include that the house does not allow.
struct StrayInclude {
    std::string file;  ///< From the top of the tree.
    int line = 0;      ///< From 1.
    std::string why;   ///< One sentence.
};

/// `file:line: error: why [include-direction]`, so that editors jump to it.
std::string gnu_line(const StrayInclude& stray);

/// Every include of ui/, fonts/ and sim/ below `tree` that points to a room it may not see, to a
/// library its room has no business with, to no file at all, or that is not written from the top.
std::vector<StrayInclude> stray_includes(const std::filesystem::path& tree);

}  // namespace dialplate

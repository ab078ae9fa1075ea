// Where two versions of a layout document differ.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// One member that differs, as both have written it; a long value is cut, "none" stands for a missing one.
struct Difference {
    std::string pointer;
    std::string mine, theirs;
};

/// The least parts that differ, in the order of `mine`. A text that is no JSON differs as a whole.
std::vector<Difference> differences_between(std::string_view mine, std::string_view theirs);

}  // namespace dialplate

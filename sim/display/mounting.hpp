// Whether the four entries of a part's `turns` table can belong to one piece of glass.
#pragma once

#include "sim/layout/layout.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// What is wrong with a display's `turns`, a sentence each; empty: they agree.
///
/// `turn` is the angle, clockwise, by which the picture is turned on the module; for an upright
/// picture the module is mounted turned the other way. The entry for 0 fixes how the glass lies in
/// the controller's memory, and geometry then leaves one pixel of it for every (x, y) of the other
/// turns. Also reported: glass that reaches outside the memory, and entries that differ in the BGR
/// bit.
[[nodiscard]] std::vector<std::string> turn_mistakes(const Display& display);

}  // namespace dialplate

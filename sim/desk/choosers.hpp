// Lists to choose from that show what each choice would mean: contrast of a paint, flash of a face.
#pragma once

#include "sim/desk/side_parts.hpp"

#include <optional>
#include <string>

namespace dialplate {

/// A list for a member that names something, or a colour. The width is what SetNextItemWidth said.
/// @return The value that was taken, as JSON; nothing most of the time.
std::optional<std::string> choose(SideFrame& side,
                                  const std::string& pointer,
                                  const OfferedMember& member);

/// A first value for a member that is put in, as JSON: what it would be when left out, where the schema says
/// so, else the first that will do.
std::string first_value(Bench& bench, const std::string& pointer, const OfferedMember& member);

}  // namespace dialplate

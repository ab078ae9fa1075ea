// The members of one object of the document, each with a way to change it that suits what the schema says of it.
#pragma once

#include "sim/desk/side_parts.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// Draws the members of the object at a pointer, with those it could have.
/// @param also  Objects of the same kind that get the same changes.
/// @param hide  Members that are drawn elsewhere.
void draw_members(SideFrame& side,
                  const std::string& pointer,
                  const std::vector<std::string>& also = {},
                  const std::vector<std::string>& hide = {});

}  // namespace dialplate

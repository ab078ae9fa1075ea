// The members of one object of the document, each with a way to change it that suits what the schema says of it:
// fields, lists with rows, forms to choose from, members to put in and to leave out.
#pragma once

#include "sim/desk/member_fields.hpp"
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

/// Draws one member alone, as a row of its own.
/// @param label  In place of its name.
/// @param stays  It cannot be left out here.
void draw_member(SideFrame& side,
                 const std::string& pointer,
                 const std::string& label = {},
                 bool stays = false);

/// What the reader says against the value at a pointer, and against what was last tried there.
void draw_objections(SideFrame& side, const std::string& pointer);

/// Whether what is folded at a pointer is open.
[[nodiscard]] bool& unfolded(const std::string& pointer);

/// A small button without a ground, at the end of a row.
bool end_button(const SideFrame& side, const char* label, const std::string& what);

}  // namespace dialplate

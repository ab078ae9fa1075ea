// What a rule says of itself, for people: what it computes and how, where its figures come from and how far
// that can be trusted, how to change them, and how to accept a finding on purpose.
#pragma once

#include "sim/check/rule.hpp"

#include <string>

namespace dialplate {

/// One rule in full.
/// @param layout  Whose figures are given as well, as they hold for it; null: those of the profiles alone.
/// @param width   Columns, 40 or more.
std::string explained(const Rule& rule, const Layout* layout, int width);

/// All rules, each with what it asks for.
std::string listed_rules(int width);

}  // namespace dialplate

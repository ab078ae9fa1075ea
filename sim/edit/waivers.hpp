// Waivers name their item by its place: they follow when the item gets another one.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/json_tree.hpp"

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace dialplate {

/// Changes that make the waivers of a document follow.
/// @param now  Where a place then is; nothing: it is gone, and its waivers with it.
using NewPlace = std::function<std::optional<std::string>(const std::string& pointer)>;
[[nodiscard]] std::vector<Change> waivers_following(const Node& document, const NewPlace& now);

/// A member or element has another pointer, and all in it.
[[nodiscard]] NewPlace after_rename(const std::string& from, const std::string& to);
/// Elements of lists and members are taken out; elements behind move up.
/// @param document  Must outlive what is returned.
[[nodiscard]] NewPlace after_removal(const Node& document, std::span<const std::string> pointers);
/// An element got another place in its list.
[[nodiscard]] NewPlace after_move(const std::string& list, std::size_t from, std::size_t to);

}  // namespace dialplate

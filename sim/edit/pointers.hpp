// JSON Pointers taken apart, and texts by name: what every part of this room asks of a document.
#pragma once

#include "sim/layout/json_tree.hpp"
#include "sim/layout/mistakes.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// "/pages/0/name": "/pages/0".
[[nodiscard]] inline std::string parent_of(const std::string& pointer) {
    return pointer.substr(0, pointer.rfind('/'));
}
/// "/pages/0/name": "name", as the pointer writes it.
[[nodiscard]] inline std::string last_of(const std::string& pointer) {
    return pointer.substr(pointer.rfind('/') + 1);
}
/// A member that is a text; empty if there is none.
[[nodiscard]] inline std::string text_in(const Node* object, std::string_view member) {
    const Node* found = object == nullptr ? nullptr : object->find(member);
    return found != nullptr && found->kind == Node::Kind::text ? found->text : "";
}

/// A document as a tree; nothing if it is no JSON, whatever is wrong with it.
[[nodiscard]] inline std::optional<Node> tree_of(std::string_view text) {
    std::vector<Finding> findings;
    Mistakes mistakes(findings);
    return parse_json(text, mistakes);
}

}  // namespace dialplate

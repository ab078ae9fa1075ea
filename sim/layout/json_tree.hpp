// A JSON document as a tree whose every value knows its place.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/mistakes.hpp"

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// Objects and lists within one another. A layout needs seven.
constexpr int deepest_nesting = 32;

struct Member;

/// One JSON value.
struct Node {
    /// `misfit`: a number that no double holds (1e999), already reported.
    enum class Kind { null, boolean, number, text, list, object, misfit };

    Kind kind = Kind::null;
    bool boolean = false;
    bool integral = false;  ///< A number without a fraction, as JSON Schema sees it: 2.0 is one.
    double number = 0.0;
    std::int64_t whole = 0;  ///< If integral: its value, at the ends of int64 if beyond.
    Place place{};           ///< First byte of the value.
    std::string text;        ///< A text; a number as it was written.
    std::vector<Node> elements;
    std::vector<Member> members;  ///< In the order of the file, names unique.

    /// The member's value, or null. Linear: meant for objects with a fixed set of members.
    [[nodiscard]] const Node* find(std::string_view name) const;
};

struct Member {
    std::string name;
    Place place{};  ///< First byte of the name, its quote.
    Node value;
};

/// Parses a document that check_text let through (RFC 8259, nothing added: no comments, no trailing
/// commas). What prevents a tree (syntax, too deep) is one mistake and gives nullopt; duplicate member
/// names and numbers beyond a double are mistakes too, but leave a tree: of duplicates the first stays.
/// @param origin  Place of the first byte of `text` in its file.
std::optional<Node> parse_json(std::string_view text, Mistakes& mistakes, Place origin = {1, 1});

/// A member name or list index as part of a JSON Pointer (RFC 6901, section 3), with its slash.
[[nodiscard]] std::string pointer_part(std::string_view name);
[[nodiscard]] std::string pointer_part(std::size_t index);

/// Every value of the tree by JSON Pointer. The document itself is "".
[[nodiscard]] std::map<std::string, Place> places_of(const Node& root);

/// What a value is, for messages: `text "abc"`, `12.5`, `true`, `null`, `a list of 3`, `an object`.
[[nodiscard]] std::string describe(const Node& node);

}  // namespace dialplate

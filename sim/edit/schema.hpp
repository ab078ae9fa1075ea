// What the layout's schema (layouts/layout.schema.json) says of a member: its description, its kind, its range.
// Understands the words of JSON Schema draft 7 that this schema uses, and takes for granted that the document
// at hand is nearly right: it is for offering members to fill in, not for judging them.
#pragma once

#include "sim/layout/json_tree.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// What may stand at a place of the document.
struct Shape {
    enum class Kind {
        text,
        words,  ///< A text that may have several lines.
        whole,
        number,
        flag,
        choice,  ///< One of `choices`.
        paint,   ///< The name of one; so are the next three.
        face,
        value,
        look,
        page,
        colour,  ///< "#RRGGBB"
        state,   ///< A text, flag or number, as the value at hand wants it.
        fixed,   ///< Cannot be anything else than it is.
        object,  ///< With the members that the schema names.
        map,     ///< With members that the author names.
        list,
        other,
    };
    Kind kind = Kind::other;
    std::string description;
    std::optional<double> least, most;
    std::optional<int> longest;        ///< Characters of a text.
    std::vector<std::string> choices;  ///< As texts.
};

/// A member that an object may have.
struct OfferedMember {
    std::string name;
    Shape shape;
    bool required = false;
    const Node* present = nullptr;  ///< Its value; null when left out.
};

class Schema {
public:
    /// @return Nothing if the text is no JSON.
    static std::optional<Schema> read(std::string_view text);

    /// The shape of what is, or would be, at a place.
    [[nodiscard]] Shape shape(const Node& document, std::string_view pointer) const;
    /// The members of the object at a place, in the schema's order; those that it has and the schema does not
    /// know come last.
    [[nodiscard]] std::vector<OfferedMember> members(const Node& document,
                                                     std::string_view pointer) const;
    /// Shape of a new element of the list, or of a new member of the map, at a place.
    [[nodiscard]] Shape within(const Node& document, std::string_view pointer) const;

private:
    explicit Schema(Node root) : root_(std::move(root)) {}
    /// Every part of the schema that speaks of one value.
    using Parts = std::vector<const Node*>;

    [[nodiscard]] Parts parts_at(const Node& document,
                                 std::string_view pointer,
                                 const Node** value) const;
    void gather(const Node& schema, const Node* value, Parts& parts, int depth) const;
    [[nodiscard]] bool holds(const Node& condition, const Node* value) const;
    [[nodiscard]] Parts child(const Parts& of, const std::string& token, const Node* value) const;
    [[nodiscard]] Shape shape_of(const Parts& parts, const std::string& member) const;

    Node root_;
};

/// The value at a JSON Pointer, or null.
[[nodiscard]] const Node* node_at(const Node& document, std::string_view pointer);

}  // namespace dialplate

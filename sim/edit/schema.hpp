// What the layout's schema (layouts/layout.schema.json) says of a member: its description, its kind, its range.
// Understands the words of JSON Schema draft 7 that this schema uses, and takes for granted that the document
// at hand is nearly right: it is for offering members to fill in, not for judging them.
#pragma once

#include "sim/layout/json_tree.hpp"

#include <functional>
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
    int fewest = 0;                    ///< Elements of a list.
    std::optional<int> greatest;       ///< Elements of a list or members of a map.
    std::vector<std::string> choices;  ///< As texts.
};

/// A member that an object may have.
struct OfferedMember {
    std::string name;
    Shape shape;
    bool required = false;
    const Node* present = nullptr;  ///< Its value; null when left out.
};

/// One of the forms that a value may have: an action that sets or steps, a value that is a number or a choice,
/// a part that is named or written out.
struct Form {
    std::string name;         ///< The member or word that makes it one; "named", "written out".
    std::string description;  ///< May be empty.
    bool present = false;     ///< Whether the value has this form now.
    std::string skeleton;     ///< The least that has this form, as JSON.
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
    /// The forms that the value at a place may have; empty when there is just one.
    [[nodiscard]] std::vector<Form> forms(const Node& document, std::string_view pointer) const;

    /// Members that come and go together with one of the object at a place.
    struct Company {
        std::vector<std::string> needed;   ///< Those that it needs beside it.
        std::vector<std::string> barred;   ///< Those that it does not go with.
        std::vector<std::string> instead;  ///< Those that are needed once it is left out.
    };
    [[nodiscard]] Company company_of(const Node& document,
                                     std::string_view pointer,
                                     const std::string& member) const;

    /// Shows every value of the document with its place and shape, the document itself first.
    using Seen =
        std::function<void(const std::string& pointer, const Shape& shape, const Node& value)>;
    void visit(const Node& document, const Seen& see) const;

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
    [[nodiscard]] Shape shape_of(const Parts& parts,
                                 const std::string& member,
                                 const Node* value) const;
    void visit(const Parts& parts,
               const std::string& pointer,
               const std::string& member,
               const Node& value,
               const Seen& see) const;
    /// The part that a reference within the schema names, else the part itself.
    [[nodiscard]] const Node& meant_by(const Node& part) const;

    Node root_;
};

/// The value at a JSON Pointer, or null.
[[nodiscard]] const Node* node_at(const Node& document, std::string_view pointer);

}  // namespace dialplate

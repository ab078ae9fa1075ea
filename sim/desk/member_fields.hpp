// One value of the document with the field that suits what the schema says of it, and where its changes go.
#pragma once

#include "sim/desk/side_parts.hpp"

#include <functional>
#include <string>
#include <vector>

namespace dialplate {

/// Where a change goes: a place in one object, and the same place in the others that are chosen with it.
struct Reach {
    std::string root;
    std::vector<std::string> also;
};

class MemberFields {
public:
    MemberFields(SideFrame& side, Reach reach)
        : side_(side), bench_(side.bench), reach_(std::move(reach)) {}

    /// The field, as wide as that.
    void field(const std::string& pointer,
               const std::string& name,
               const Shape& shape,
               const Node& value,
               float width);
    /// Whether a value of that shape is written in a field of one or a few lines.
    [[nodiscard]] static bool is_field(const Shape& shape, const Node& value);

    /// A name that is typed, of a thing: renamed with all that use it. @return The new one, once entered.
    std::string name_field(const std::string& pointer, const std::string& name, float width);

    void put(const std::string& pointer, const std::string& value, const std::string& stroke = {});
    /// A change of the document at a place, made in every reached object one after the other.
    using Deed = std::function<Amended(
        const Grounds& grounds, const std::string& text, const std::string& pointer)>;
    void make(const std::string& pointer, const std::string& name, const Deed& deed);

private:
    void text_field(const std::string& pointer, const Node& value);
    void lines_field(const std::string& pointer, const Node& value, float width);
    void whole_field(const std::string& pointer, const Shape& shape, const Node& value);
    void number_field(const std::string& pointer, const Node& value);
    void pair_field(const std::string& pointer, const Node& value, float width);
    void written_field(const std::string& pointer);
    void chooser(const std::string& pointer,
                 const std::string& name,
                 const Shape& shape,
                 const Node& value);

    SideFrame& side_;
    Bench& bench_;
    Reach reach_;
};

}  // namespace dialplate

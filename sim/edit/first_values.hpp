// What a member, an element or a whole thing with a name is at first, when a hand puts it into a document.
#pragma once

#include "sim/edit/schema.hpp"
#include "sim/layout/layout.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// What first values are taken from.
struct Grounds {
    const Schema& schema;
    const Node& document;
    const Layout* layout = nullptr;  ///< As it was last shown; null: never.
};

/// The names that will do at a place: those of its kind, of values only such whose type the place can take.
[[nodiscard]] std::vector<std::string> names_that_fit(const Grounds& grounds,
                                                      const std::string& pointer,
                                                      const Shape& shape);

/// A first value for a member, as JSON: what it would be when left out, where the schema says so, else the
/// first that will do.
/// @param pointer  Where it goes.
/// @param member   Its name.
[[nodiscard]] std::string first_value(const Grounds& grounds,
                                      const std::string& pointer,
                                      const std::string& member,
                                      const Shape& shape);

/// A new paint, look, face, value or page, as JSON.
/// @param like  Name of one that it shall resemble; may be empty.
/// @return Empty where nothing can be made from what the document has.
[[nodiscard]] std::string first_thing(const Grounds& grounds,
                                      Shape::Kind kind,
                                      std::string_view text,
                                      const std::string& like,
                                      const std::string& name);

}  // namespace dialplate

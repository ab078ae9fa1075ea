// Changes to a layout document that leave every other byte as its author wrote it.
#pragma once

#include "sim/layout/finding.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace dialplate {

/// The name of the operation in JSON Patch: "add", "remove", "replace".
const char* name_of(Change::Kind kind);

/// A document with changes made to it, or why they cannot be made.
struct Amended {
    std::optional<std::string> text;  ///< Absent exactly when there is a mistake.
    std::string mistake;  ///< One sentence: the change, what was found, what was expected.
};

/// Applies the changes one after another, all or none. Members keep their order; what is added to an object
/// comes last; what is added stands on a line of its own where its neighbours do, with their indentation,
/// else behind them on the same line. Further lines of a value are indented like the line it begins on.
/// @param document  A JSON document without mistakes (RFC 8259).
/// @param changes   Pointers are those of the document as the changes before have left it. The value of
///                  `add` and `replace` is JSON text.
Amended amend(std::string_view document, std::span<const Change> changes);

/// The bytes of the value at a pointer, as its author wrote them.
/// @param document  A JSON document without mistakes.
/// @return nullopt if there is no such value.
std::optional<std::string_view> written_at(std::string_view document, std::string_view pointer);

/// The same as `add` and `replace` take it: further lines without the indentation of the line it begins on,
/// which they get again where it goes.
std::optional<std::string> value_at(std::string_view document, std::string_view pointer);

/// Gives a member another name, or an element another place in its list (as JSON Patch's "move" does within
/// one object or list, but a member keeps its place). The bytes between the elements stay where they are.
/// @param document  A JSON document without mistakes.
/// @param to        Differs from `from` in its last token alone.
Amended moved(std::string_view document, std::string_view from, std::string_view to);

}  // namespace dialplate

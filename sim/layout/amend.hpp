// Changes to a layout document that leave every other byte as its author wrote it.
#pragma once

#include "sim/layout/finding.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace dialplate {

/// A document with changes made to it, or why they cannot be made.
struct Amended {
    std::optional<std::string> text;  ///< Absent exactly when there is a mistake.
    std::string mistake;  ///< One sentence: the change, what was found, what was expected.
};

/// Applies the changes one after another, all or none. Members keep their order; what is added to an object
/// comes last; what is added stands on a line of its own where its neighbours do, with their indentation,
/// else behind them on the same line. Further lines of an added value are indented like its first.
/// @param document  A JSON document without mistakes (RFC 8259).
/// @param changes   Pointers are those of the document as the changes before have left it. The value of
///                  `add` and `replace` is JSON text.
Amended amend(std::string_view document, std::span<const Change> changes);

}  // namespace dialplate

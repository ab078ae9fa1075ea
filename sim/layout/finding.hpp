// One type for everything that is wrong with a layout, from a missing comma to a key that a finger
// misses.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// A place in a layout file. Lines and columns count from 1; columns count bytes. Line 0: the file as
/// a whole.
struct Place {
    int line = 0;
    int column = 0;
};

/// `must`: the layout is unusable or breaks a minimum; `should`: a published recommendation is missed;
/// `note`: worth knowing. `error` is a mistake in the document itself, found while reading it.
enum class Severity { error, must, should, note };

/// A change to the document. The kinds and what they do are those of JSON Patch (RFC 6902, section 4).
struct Change {
    enum class Kind { add, remove, replace };

    Kind kind = Kind::replace;
    std::string pointer;  ///< JSON Pointer (RFC 6901); as an index, "-" is behind the last element.
    std::string value{};  ///< JSON text; empty with `remove`.
};

/// The result of a check, or a mistake found while reading.
struct Finding {
    Severity severity = Severity::error;
    std::string rule;  ///< Short name, also the name of the file that computes it.
    std::string
        pointer;  ///< JSON Pointer (RFC 6901) of the item or member; empty: the whole document.
    Place place{};
    std::string
        file{};  ///< Where `place` is, if not in the layout itself: a part file. Else empty.
    std::string message;  ///< One sentence: the thing, the value found, the value needed.
    std::optional<double> measured;  ///< In `unit`.
    std::optional<double> required;  ///< In `unit`.
    std::string unit;
    std::string source;                 ///< Standard, data sheet or "common practice, no source".
    std::optional<std::string> waived;  ///< The author's reason, if accepted on purpose.
    std::vector<Change> cure{};  ///< Changes that cure it, if there is just one sensible way.
};

/// By file, place, then by rule (stable): the order in which findings are reported.
void sort_by_place(std::vector<Finding>& findings);

/// @param file  Name of the layout; a finding that names a file of its own keeps it.
/// @return `file:line:column: severity: message [rule]` (GNU Coding Standards, "Formatting Error Messages").
std::string gnu_line(const std::string& file, const Finding& finding);

const char* name_of(Severity severity);

}  // namespace dialplate

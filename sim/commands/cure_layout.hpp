// Curing a layout file.
#pragma once

#include "sim/check/curing.hpp"
#include "sim/check/report.hpp"

#include <optional>
#include <string>

namespace dialplate {

/// Where a file is cured from and to.
struct CureWish {
    std::string file;    ///< "-" is standard input.
    std::string output;  ///< Empty: `file` itself; "-" is standard output.
};

/// What became of it.
struct CuredFile {
    Report report;        ///< What is found afterwards.
    std::string account;  ///< What was changed and what was tried in vain, in lines.
};

/// Reads a layout, makes the changes that cure it and writes it, whole or not at all. A file to which nothing
/// is changed is not written again; one that cannot be read or has mistakes is left alone, and its report
/// says why.
/// @return nullopt when it cannot be written; the reason then is on standard error.
std::optional<CuredFile> cure_layout(const CureWish& wish);

/// What was done, a line for each change, with what stood there before.
std::string cured_lines(const std::string& file, const std::string& before, const Cured& cured);

}  // namespace dialplate

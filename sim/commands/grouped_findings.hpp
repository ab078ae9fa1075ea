// Findings for people: by severity, then by rule, folded to the width of the terminal.
#pragma once

#include "sim/check/report.hpp"

#include <span>
#include <string>

namespace dialplate {

/// How the text is to look.
struct Sheet {
    int width = 100;      ///< Columns, 40 or more.
    bool colour = false;  ///< With Select Graphic Rendition (ECMA-48 8.3.117).
};

/// What was found in each file: a heading with the counts, then for each severity the rules, what each asks
/// for, and its findings with their place; accepted ones last, with the reason. Every line ends in a line
/// feed; columns count characters.
std::string grouped_findings(std::span<const Report> reports, const Sheet& sheet);

}  // namespace dialplate

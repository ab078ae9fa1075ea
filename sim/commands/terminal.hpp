// What the commands say to people: colour where a terminal shows it, plain text everywhere else.
#pragma once

#include "sim/layout/finding.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

enum class Stream { results, errors };

bool on_terminal(Stream stream);

/// Whether text on the stream may be coloured: it is a terminal, TERM is not "dumb", and NO_COLOR is
/// unset or empty (https://no-color.org).
bool colour_on(Stream stream);

/// Columns of the terminal that shows the results, 60 to 160; 100 where that cannot be told.
int columns_of_results();

/// Words in the colour of a severity, or bold; unchanged when `colour` is false.
std::string toned(Severity severity, const std::string& words, bool colour);
std::string emphasised(const std::string& words, bool colour);

/// Lines of findings with their severities coloured; unchanged when `colour` is false.
std::string tinted(std::string lines, bool colour);

/// `error: message` on standard error, named after the program.
void complain(std::string_view message);

/// Findings on standard error, one line each, the severity coloured where that is possible.
void complain(const std::string& file, const std::vector<Finding>& findings);

}  // namespace dialplate

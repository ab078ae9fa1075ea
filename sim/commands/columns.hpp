// Columns of a table in plain text.
#pragma once

#include <string>

namespace dialplate {

/// The text with spaces behind it, or before it, up to so many characters; a longer one as it is.
std::string left(const std::string& text, std::size_t width);
std::string right(const std::string& text, std::size_t width);

}  // namespace dialplate

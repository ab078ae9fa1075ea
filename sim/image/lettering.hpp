// Words as the glass needs them: characters, and lines.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// Code points of well-formed UTF-8 (a layout was checked for that when it was read).
std::u32string code_points(std::string_view utf8);

/// UTF-8 of one code point.
std::string utf8(char32_t code);

/// The lines of a text, separated by line feeds; an empty text has none.
std::vector<std::u32string> lines_of(std::string_view text);

}  // namespace dialplate

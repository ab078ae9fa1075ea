// Text in lines of a set width.
#pragma once

#include <string>

namespace dialplate {

/// A text folded into lines of at most `width` columns (characters), broken at blanks; all but the first begin
/// with `indent` blanks, which `width` does not count. A longer word stays whole. No line feed at the end.
std::string folded(const std::string& text, int width, int indent);

/// A text with blanks behind it up to a column; at least one.
std::string up_to(int column, const std::string& text);

}  // namespace dialplate

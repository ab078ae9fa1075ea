// Texts with fields to fill in.
#pragma once

#include <map>
#include <string>
#include <string_view>

namespace dialplate {

using Fields = std::map<std::string, std::string, std::less<>>;

/// The text with every @name@ replaced by the field of that name, in one pass.
/// @pre Every name between two @ of one line is a field.
std::string filled(std::string_view text, const Fields& fields);

/// "0x2A"
std::string hexadecimal(int byte);

/// A number as people write it, with at most three decimals and no trailing zeros: "16", "0.5".
std::string plain_number(double number);

/// A text as it may stand in a comment: control characters become blanks; no backslash may end the line.
std::string in_comment(std::string_view text);

}  // namespace dialplate

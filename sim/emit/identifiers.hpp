// From the names in a layout to names that a C++ compiler takes.
#pragma once

#include <set>
#include <string>
#include <string_view>

namespace dialplate {

/// The words of a text in lower case, joined by underscores: "2.4 kHz" gives "2_4_khz", "-10 dB"
/// "minus_10_db". Latin letters lose their accents, some signs become words (+ plus, % percent, arrows their
/// direction), everything else separates words. Lower case throughout, because the headers of the
/// microcontroller own all that is written in capitals.
/// @param text  UTF-8.
/// @return May start with a digit, may be empty, may be a keyword.
std::string words_of(std::string_view text);

/// The names of one scope: each a valid identifier and no two alike. The same names, added in the same
/// order, give the same identifiers.
class Identifiers {
public:
    /// @param words     As words_of() returns them, or several of them joined by underscores.
    /// @param stand_in  Stands before words that start with a digit, and in place of none; a valid
    ///                  identifier.
    /// @return `words`; with an underscore at the end if they are a word of the language, with a number if
    ///         the name is taken.
    std::string add(std::string_view words, std::string_view stand_in);

private:
    std::set<std::string, std::less<>> taken_;
};

}  // namespace dialplate

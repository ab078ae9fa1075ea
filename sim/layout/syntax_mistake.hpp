// Where JSON breaks off, and what should have stood there.
#pragma once

#include "sim/layout/mistakes.hpp"

#include <cstddef>
#include <string_view>

namespace dialplate {

struct Node;

/// What the grammar wants next.
enum class Expected { document, first_name, next_name, colon, first_element, next_element, end };

struct Token {
    std::size_t offset = 0;  ///< Bytes before it.
    Place place{};
    std::string_view text;
};

/// Walks along a JSON text token by token. It trusts that what it passes is well formed: the parser that
/// drives it has seen it already.
class TokenWalk {
public:
    TokenWalk(std::string_view text, Place origin)
        : text_(text), line_(origin.line), column_(origin.column) {}

    /// The next name, value or bracket, past white space, commas and colons.
    Token take_token();
    /// The same without taking it.
    [[nodiscard]] Token peek_token() const;
    /// The next token, a comma or colon too, if the parser is known to have got to byte `position`
    /// (counted from 1) and to have refused what it met there. Commas and colons before are passed and
    /// kept in `passed`. The text is empty at the end of the file.
    Token refused_token(std::size_t position, char& passed);

    Expected state = Expected::document;

private:
    void step();
    void skip(std::string_view which);

    std::string_view text_;
    std::size_t at_ = 0;
    int line_;
    int column_;
};

/// The mistake for a syntax error that the parser found at byte `position`.
/// @param open  The innermost object or list that is still open; null: none.
Mistake syntax_mistake(TokenWalk walk, std::size_t position, const Node* open);

}  // namespace dialplate

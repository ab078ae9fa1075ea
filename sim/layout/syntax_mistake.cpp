#include "sim/layout/syntax_mistake.hpp"

#include "sim/layout/json_tree.hpp"

#include <string>

namespace dialplate {
namespace {

constexpr std::string_view white_space = " \t\r\n";
constexpr std::string_view brackets = "{}[]";

// Length of the token at the start of `rest`; a text that is not closed ends with its line.
std::size_t token_length(std::string_view rest) {
    if (rest.empty()) return 0;
    if (rest.front() == '"') {
        for (std::size_t i = 1; i < rest.size(); ++i) {
            if (rest[i] == '"') return i + 1;
            if (rest[i] == '\n') return i;
            if (rest[i] == '\\') ++i;
        }
        return rest.size();
    }
    if (brackets.find(rest.front()) != std::string_view::npos || rest.front() == ',' ||
        rest.front() == ':') {
        return 1;
    }
    const std::size_t end = rest.find_first_of(" \t\r\n,:{}[]\"");
    return end == std::string_view::npos ? rest.size() : end;
}

// Why a text is not well formed, with the offset of the fault in it; empty if it is.
struct TextFault {
    std::string why;
    std::size_t at = 0;
};

bool hexadecimal(std::string_view digits) {
    return digits.size() == 4 &&
           digits.find_first_not_of("0123456789abcdefABCDEF") == std::string_view::npos;
}

TextFault text_fault(std::string_view text) {
    for (std::size_t i = 1; i < text.size(); ++i) {
        const char c = text[i];
        if (c == '"') return {};
        if (static_cast<unsigned char>(c) < 0x20 && c != '\r') {
            return {"holds a control character (" + std::to_string(static_cast<int>(c)) +
                        "); write it as \\t, \\n or \\u00XX",
                    i};
        }
        if (c != '\\') continue;
        if (i + 1 == text.size()) break;
        const char escape = text[i + 1];
        if (escape == 'u') {
            const std::string_view digits = text.substr(i + 2, 4);
            if (!hexadecimal(digits)) return {"has \\u without four hexadecimal digits", i};
            // Halves of a pair (D800..DFFF) stand for a character only together.
            const bool half = (digits[0] == 'd' || digits[0] == 'D') && digits[1] >= '8';
            if (half) {
                const bool first = digits[1] == '8' || digits[1] == '9' || digits[1] == 'a' ||
                                   digits[1] == 'A' || digits[1] == 'b' || digits[1] == 'B';
                const std::string_view second = text.substr(i + 6, 6);
                const bool paired =
                    first && second.size() == 6 && second.starts_with("\\u") &&
                    hexadecimal(second.substr(2)) && (second[2] == 'd' || second[2] == 'D') &&
                    std::string_view("cdefCDEF").find(second[3]) != std::string_view::npos;
                if (!paired) return {"has half of a \\u pair", i};
                i += 6;
            }
            i += 5;
        } else if (std::string_view("\"\\/bfnrt").find(escape) == std::string_view::npos) {
            return {"has an unknown escape \\" + std::string(1, escape) +
                        "; JSON knows \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\uXXXX",
                    i};
        } else {
            ++i;
        }
    }
    return {"is not closed by a quote before its line ends", 0};
}

std::string wanted(Expected state, char passed) {
    switch (state) {
        case Expected::document:
            return "a layout is an object { ... }";
        case Expected::first_name:
            return "needs a member name in double quotes, or }";
        case Expected::next_name:
            return passed == ',' ? "needs a member name in double quotes" : "needs a comma or }";
        case Expected::colon:
            return passed == ':' ? "needs a value" : "needs a colon after the member name";
        case Expected::first_element:
            return "needs a value, or ]";
        case Expected::next_element:
            return passed == ',' ? "needs a value" : "needs a comma or ]";
        case Expected::end:
            return "needs the end of the file";
    }
    return {};
}

bool letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

}  // namespace

void TokenWalk::step() {
    if (text_[at_] == '\n') {
        ++line_;
        column_ = 1;
    } else {
        ++column_;
    }
    ++at_;
}

void TokenWalk::skip(std::string_view which) {
    while (at_ < text_.size() && which.find(text_[at_]) != std::string_view::npos)
        step();
}

Token TokenWalk::take_token() {
    skip(" \t\r\n,:");
    const Token token{at_, {line_, column_}, text_.substr(at_, token_length(text_.substr(at_)))};
    at_ += token.text.size();
    column_ += static_cast<int>(token.text.size());
    return token;
}

Token TokenWalk::peek_token() const {
    TokenWalk ahead = *this;
    return ahead.take_token();
}

Token TokenWalk::refused_token(std::size_t position, char& passed) {
    passed = '\0';
    for (;;) {
        skip(white_space);
        const bool separator = at_ < text_.size() && (text_[at_] == ',' || text_[at_] == ':');
        if (!separator || at_ + 1 >= position) break;
        passed = text_[at_];
        step();
    }
    return {at_, {line_, column_}, text_.substr(at_, token_length(text_.substr(at_)))};
}

Mistake syntax_mistake(TokenWalk walk, std::size_t position, const Node* open) {
    char passed = '\0';
    const Token token = walk.refused_token(position, passed);
    Mistake mistake{.rule = "syntax", .place = token.place, .message = {}};
    const std::string needs = wanted(walk.state, passed);
    const std::string_view found = token.text;
    if (found.empty()) {
        mistake.message = "the file ends too early: " + needs;
        if (open != nullptr) {
            mistake.message += std::string("; the ") +
                               (open->kind == Node::Kind::object ? "object" : "list") +
                               " begun in line " + std::to_string(open->place.line) + ", column " +
                               std::to_string(open->place.column) + " is not closed";
        }
        return mistake;
    }
    if (walk.state == Expected::end) {
        mistake.rule = "trailing-text";
        mistake.message = "the layout has ended, but " + quote(found) + " follows";
        return mistake;
    }
    if (found.front() == '"') {
        if (const TextFault fault = text_fault(found); !fault.why.empty()) {
            mistake.place.column += static_cast<int>(fault.at);
            mistake.message = "the text " + quote(found.substr(1)) + ' ' + fault.why;
            return mistake;
        }
        if (passed == '\0' &&
            (walk.state == Expected::next_name || walk.state == Expected::next_element)) {
            mistake.message =
                "a comma is missing before " + quote(found.substr(1, found.size() - 2));
            return mistake;
        }
    }
    if (passed == ',' && (found == "}" || found == "]")) {
        mistake.message = "nothing stands between the comma and " + std::string(found) +
                          "; JSON allows no comma at the end";
    } else if (found.starts_with("//") || found.starts_with("/*") || found.front() == '#') {
        mistake.message = "JSON has no comments; found " + quote(found);
    } else if (found.front() == '\'') {
        mistake.message = "text stands in double quotes; found " + quote(found);
    } else if (letter(found.front()) && passed == ':') {
        mistake.message =
            "the word " + quote(found) +
            " is no value; allowed are true, false, null, numbers, and text in double "
            "quotes";
    } else {
        mistake.message = "found " + quote(found) + "; " + needs;
    }
    return mistake;
}

}  // namespace dialplate

#include "sim/emit/identifiers.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <vector>

namespace dialplate {
namespace {

/// Words of C++20 and its spelt operators; then macros of C libraries that are written in lower case.
constexpr std::string_view reserved[] = {
    "alignas",
    "alignof",
    "and",
    "and_eq",
    "asm",
    "auto",
    "bitand",
    "bitor",
    "bool",
    "break",
    "case",
    "catch",
    "char",
    "char16_t",
    "char32_t",
    "char8_t",
    "class",
    "co_await",
    "co_return",
    "co_yield",
    "compl",
    "concept",
    "const",
    "const_cast",
    "consteval",
    "constexpr",
    "constinit",
    "continue",
    "decltype",
    "default",
    "delete",
    "do",
    "double",
    "dynamic_cast",
    "else",
    "enum",
    "explicit",
    "export",
    "extern",
    "false",
    "float",
    "for",
    "friend",
    "goto",
    "if",
    "inline",
    "int",
    "long",
    "mutable",
    "namespace",
    "new",
    "noexcept",
    "not",
    "not_eq",
    "nullptr",
    "operator",
    "or",
    "or_eq",
    "private",
    "protected",
    "public",
    "register",
    "requires",
    "return",
    "short",
    "signed",
    "sizeof",
    "static",
    "static_assert",
    "static_cast",
    "struct",
    "switch",
    "template",
    "this",
    "thread_local",
    "throw",
    "true",
    "try",
    "typedef",
    "typeid",
    "typename",
    "union",
    "unsigned",
    "using",
    "virtual",
    "void",
    "volatile",
    "wchar_t",
    "while",
    "xor",
    "xor_eq",
    "reinterpret_cast",
    "assert",
    "errno",
    "linux",
    "stderr",
    "stdin",
    "stdout",
    "unix",
};

bool is_reserved(std::string_view word) {
    return std::find(std::begin(reserved), std::end(reserved), word) != std::end(reserved);
}

/// Code points of UTF-8; U+FFFD for what is none.
std::vector<char32_t> decoded(std::string_view text) {
    std::vector<char32_t> points;
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t more = lead < 0x80    ? 0
                                 : lead >= 0xF0 ? 3
                                 : lead >= 0xE0 ? 2
                                 : lead >= 0xC0 ? 1
                                                : 0;
        char32_t point = lead < 0x80 ? lead : lead >= 0xC0 ? lead & (0x3FU >> more) : 0xFFFD;
        ++i;
        for (std::size_t n = 0; n < more && i < text.size(); ++n, ++i) {
            point = point << 6 | (static_cast<unsigned char>(text[i]) & 0x3FU);
        }
        points.push_back(point);
    }
    return points;
}

bool is_digit(char32_t c) {
    return c >= U'0' && c <= U'9';
}

/// What a letter or digit becomes inside a word; empty: it is none.
std::string_view letters_of(char32_t c) {
    static constexpr std::string_view ascii = "0123456789abcdefghijklmnopqrstuvwxyz";
    // U+0100 to U+017F without their accents (Unicode, canonical decomposition).
    static constexpr std::string_view extended =
        "aaaaaaccccccccddddeeeeeeeeeegggggggghhhhiiiiiiiiiiiijjkkkllllllllllnnnnnnnnnoooooooorrrrrr"
        "ss"
        "ssssssttttttuuuuuuuuuuuuwwyyyzzzzzzs";
    static_assert(extended.size() == 128);
    static constexpr std::string_view latin[] = {
        "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i",  "i",
        "d", "n", "o", "o", "o", "o", "o",  "x", "o", "u", "u", "u", "u", "y", "th", "ss"};
    if (is_digit(c)) return ascii.substr(c - U'0', 1);
    if (c >= U'a' && c <= U'z') return ascii.substr(10 + (c - U'a'), 1);
    if (c >= U'A' && c <= U'Z') return ascii.substr(10 + (c - U'A'), 1);
    if (c == 0xF7) return {};  // the sign of division
    if (c == 0xFF) return "y";
    if (c >= 0xC0 && c < 0xE0) return latin[c - 0xC0];
    if (c >= 0xE0 && c < 0xFF) return latin[c - 0xE0];
    if (c >= 0x100 && c < 0x180) return extended.substr(c - 0x100, 1);
    if (c == 0xB5 || c == 0x3BC) return "u";  // micro
    return {};
}

/// Signs that are words of their own.
std::string_view word_of(char32_t c) {
    struct Sign {
        char32_t point;
        std::string_view word;
    };
    static constexpr Sign signs[] = {
        {U'+', "plus"},    {U'%', "percent"}, {U'<', "left"},    {U'>', "right"},
        {U'*', "star"},    {U'=', "equals"},  {0xB0, "degrees"}, {0xB1, "plus_minus"},
        {0x3A9, "ohm"},    {0x2126, "ohm"},   {0x2190, "left"},  {0x2191, "up"},
        {0x2192, "right"}, {0x2193, "down"},  {0x25B2, "up"},    {0x25B3, "up"},
        {0x25B6, "right"}, {0x25B7, "right"}, {0x25BC, "down"},  {0x25BD, "down"},
        {0x25C0, "left"},  {0x25C1, "left"},
    };
    for (const Sign& sign : signs) {
        if (sign.point == c) return sign.word;
    }
    return {};
}

bool is_minus(char32_t c) {
    return c == U'-' || c == 0x2013 || c == 0x2212;  // hyphen, en dash, minus sign
}

}  // namespace

std::string words_of(std::string_view text) {
    const std::vector<char32_t> points = decoded(text);
    std::string words;
    bool inside = false;  // a word that a further letter continues
    const auto separate = [&] {
        if (!words.empty() && words.back() != '_') words += '_';
        inside = false;
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        if (const std::string_view letters = letters_of(points[i]); !letters.empty()) {
            if (!inside) separate();
            words += letters;
            inside = true;
            continue;
        }
        std::string_view word = word_of(points[i]);
        // A minus stands before a number or alone; between letters it is a hyphen.
        if (is_minus(points[i]) && !inside &&
            (points.size() == 1 || (i + 1 < points.size() && is_digit(points[i + 1])))) {
            word = "minus";
        }
        separate();
        if (!word.empty()) {
            words += word;
            separate();
        }
    }
    while (!words.empty() && words.back() == '_') {
        words.pop_back();
    }
    return words;
}

std::string Identifiers::add(std::string_view words, std::string_view stand_in) {
    std::string name(words);
    if (name.empty()) {
        name = stand_in;
    } else if (is_digit(static_cast<unsigned char>(name.front()))) {
        name = std::string(stand_in) + '_' + name;
    }
    if (is_reserved(name)) name += '_';
    std::string free = name;
    // Two underscores in a row are the compiler's.
    const std::string joint = name.back() == '_' ? "" : "_";
    for (int n = 2; !taken_.insert(free).second; ++n) {
        free = name + joint + std::to_string(n);
    }
    return free;
}

}  // namespace dialplate

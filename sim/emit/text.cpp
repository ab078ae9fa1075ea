#include "sim/emit/text.hpp"

#include <cassert>
#include <cstdio>

namespace dialplate {

std::string filled(std::string_view text, const Fields& fields) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t open = text.find('@', at);
        out += text.substr(at, open - at);
        if (open == std::string_view::npos) break;
        const std::size_t close = text.find('@', open + 1);
        assert(close != std::string_view::npos);
        const auto field = fields.find(text.substr(open + 1, close - open - 1));
        assert(field != fields.end());
        out += field->second;
        at = close + 1;
    }
    return out;
}

std::string hexadecimal(int byte) {
    char text[8];
    std::snprintf(text, sizeof text, "0x%02X", static_cast<unsigned>(byte) & 0xFFU);
    return text;
}

std::string plain_number(double number) {
    char text[40];
    std::snprintf(text, sizeof text, "%.3f", number);
    std::string plain = text;
    plain.erase(plain.find_last_not_of('0') + 1);
    if (plain.back() == '.') plain.pop_back();
    return plain;
}

std::string in_comment(std::string_view text) {
    std::string line;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        line += byte < 0x20 || byte == 0x7F ? ' ' : c;
    }
    // A backslash or the trigraph for one at the end would draw the next line into the comment.
    while (!line.empty() && (line.back() == '\\' || line.back() == '/' || line.back() == ' ')) {
        line.pop_back();
    }
    return line;
}

}  // namespace dialplate

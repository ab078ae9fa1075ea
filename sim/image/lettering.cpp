#include "sim/image/lettering.hpp"

#include <cstdint>

namespace dialplate {

std::u32string code_points(std::string_view utf8) {
    std::u32string out;
    for (std::size_t i = 0; i < utf8.size();) {
        const auto lead = static_cast<unsigned char>(utf8[i]);
        const std::size_t length = lead < 0x80 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        char32_t code = length == 1 ? lead : lead & (0xFFU >> (length + 1));
        for (std::size_t k = 1; k < length && i + k < utf8.size(); ++k) {
            code = code << 6 | (static_cast<unsigned char>(utf8[i + k]) & 0x3FU);
        }
        out.push_back(code);
        i += length;
    }
    return out;
}

std::string utf8(char32_t code) {
    std::string out;
    const auto put = [&](std::uint32_t bits) { out.push_back(static_cast<char>(bits)); };
    if (code < 0x80) {
        put(code);
    } else if (code < 0x800) {
        put(0xC0U | code >> 6);
        put(0x80U | (code & 0x3FU));
    } else if (code < 0x10000) {
        put(0xE0U | code >> 12);
        put(0x80U | (code >> 6 & 0x3FU));
        put(0x80U | (code & 0x3FU));
    } else {
        put(0xF0U | code >> 18);
        put(0x80U | (code >> 12 & 0x3FU));
        put(0x80U | (code >> 6 & 0x3FU));
        put(0x80U | (code & 0x3FU));
    }
    return out;
}

std::vector<std::u32string> lines_of(std::string_view text) {
    std::vector<std::u32string> lines;
    if (text.empty()) return lines;
    lines.emplace_back();
    for (const char32_t code : code_points(text)) {
        if (code == U'\n') {
            lines.emplace_back();
        } else {
            lines.back().push_back(code);
        }
    }
    return lines;
}

}  // namespace dialplate

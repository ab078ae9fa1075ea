#include "sim/desk/typeface.hpp"

#include <utility>

namespace dialplate {
namespace {

/// Next code point of UTF-8 text; a byte that does not belong counts as "?".
char32_t next_code(std::string_view words, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(words[i]); };
    const unsigned first = byte(at++);
    int more = 0;
    char32_t code = first;
    if (first < 0x80)
        return code;
    else if (first >= 0xC2 && first < 0xE0)
        more = 1, code = first & 0x1Fu;
    else if (first >= 0xE0 && first < 0xF0)
        more = 2, code = first & 0x0Fu;
    else if (first >= 0xF0 && first < 0xF5)
        more = 3, code = first & 0x07u;
    else
        return U'?';
    for (; more > 0; --more) {
        if (at >= words.size() || (byte(at) & 0xC0u) != 0x80u) return U'?';
        code = (code << 6) | (byte(at++) & 0x3Fu);
    }
    return code;
}

}  // namespace

std::string Typeface::load(const std::string& file, int size) {
    FaceRequest request{.file = file, .size = size, .characters = {}, .even_digits = false};
    for (char32_t code = U' '; code <= U'~'; ++code)
        request.characters += code;
    request.characters += U"\u00b0\u00b1\u00b5\u00d7\u03a9\u2022\u2212\u25b2\u25bc\u25b6\u25c0";
    FaceResult result = rasterise(request);
    if (!result.face) return result.error;
    letters_.clear();
    for (Glyph& glyph : result.face->glyphs)
        letters_.emplace(glyph.code, std::move(glyph.cell));
    height_ = result.face->height;
    ascent_ = result.face->ascent;
    return {};
}

const Bitmap& Typeface::letter(char32_t code) const {
    auto found = letters_.find(code);
    if (found == letters_.end()) found = letters_.find(U'?');
    return found == letters_.end() ? blank_ : found->second;
}

int Typeface::width(std::string_view words, int spacing) const {
    int columns = 0;
    for (std::size_t at = 0; at < words.size();)
        columns += letter(next_code(words, at)).width + spacing;
    return words.empty() ? 0 : (columns - spacing) * enlarged_;
}

std::string Typeface::fitted(std::string_view words, int room) const {
    if (width(words) <= room) return std::string{words};
    std::size_t end = 0;
    for (std::size_t at = 0; at < words.size();) {
        next_code(words, at);
        if (width(std::string{words.substr(0, at)} + "...") > room) break;
        end = at;
    }
    return std::string{words.substr(0, end)} + "...";
}

std::vector<std::string> Typeface::lines(std::string_view words, int room) const {
    std::vector<std::string> all;
    while (width(words) > room) {
        std::size_t end = 0, cut = 0;  // after the last word that fits; after the last letter
        for (std::size_t at = 0; at < words.size();) {
            if (words[at] == ' ') end = at;
            next_code(words, at);
            if (width(words.substr(0, at)) > room) break;
            cut = at;
        }
        if (end == 0) end = cut;
        if (end == 0) break;  // no letter fits
        all.emplace_back(words.substr(0, end));
        words.remove_prefix(words[end] == ' ' ? end + 1 : end);
    }
    all.emplace_back(words);
    return all;
}

int Typeface::draw(
    Canvas& canvas, int x, int y, std::string_view words, const Setting& setting) const {
    int left = x;
    for (std::size_t at = 0; at < words.size();) {
        const Bitmap& cell = letter(next_code(words, at));
        for (int row = 0; row < cell.height; ++row)
            for (int column = 0; column < cell.width; ++column)
                if (cell.ink(column, row))
                    canvas.fill(
                        {left + column * enlarged_, y + row * enlarged_, enlarged_, enlarged_},
                        setting.ink);
        left += (cell.width + setting.spacing) * enlarged_;
    }
    return words.empty() ? 0 : left - setting.spacing * enlarged_ - x;
}

}  // namespace dialplate

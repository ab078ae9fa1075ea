// From a font file to cells: draws each character, then gives all of them one height.
#include "fonts/face.hpp"
#include "fonts/font_file.hpp"
#include "fonts/ink_box.hpp"
#include "fonts/open_font.hpp"

#include <algorithm>
#include <iterator>

namespace dialplate {

using namespace fonts;

namespace {

// The image holds width, height and number of cells in one byte each (ui/image.md, "Face").
constexpr int widest_cell = 255;
constexpr int highest_cell = 255;
constexpr std::size_t most_glyphs = 255;
// Above four times the highest cell not even a figure at a third of the em fits.
constexpr int greatest_size = 4 * highest_cell;

// The character itself where it prints in ASCII, else U+0301.
std::string name_of_character(char32_t code) {
    if (code > U' ' && code < 127) return "\"" + std::string(1, static_cast<char>(code)) + "\"";
    constexpr char hex[] = "0123456789ABCDEF";
    std::string name = "U+";
    for (int shift = code > 0xFFFF ? 20 : 12; shift >= 0; shift -= 4)
        name += hex[(code >> shift) & 15];
    return name;
}

std::u32string sorted_set(std::u32string characters) {
    std::sort(characters.begin(), characters.end());
    characters.erase(std::unique(characters.begin(), characters.end()), characters.end());
    return characters;
}

// Columns of the cell: from the pen, or the first ink left of it, to the next pen or the last ink.
struct Extent {
    int before_pen = 0;
    int width = 0;
};

Extent extent_of(const Drawn& drawn) {
    if (drawn.ink.width == 0) return {0, drawn.advance};
    const int before_pen = std::max(0, -drawn.left);
    return {before_pen, before_pen + std::max(drawn.advance, drawn.left + drawn.ink.width)};
}

bool lines_up(char32_t code) {
    return (code >= U'0' && code <= U'9') || code == U'-' || code == U'\u2212';
}

bool is_space(char32_t code) {
    return code == U' ' || code == U'\u00A0' || (code >= U'\u2000' && code <= U'\u200A') ||
           code == U'\u202F' || code == U'\u3000';
}

FaceResult failure(FaceResult result, std::string error) {
    result.face.reset();
    result.error = std::move(error);
    return result;
}

}  // namespace

FaceResult rasterise(const FaceRequest& request) {
    FaceResult result;
    const std::u32string characters = sorted_set(request.characters);
    if (characters.empty())
        return failure({}, "no characters are asked of \"" + request.file + "\"");
    if (request.size < 1 || request.size > greatest_size)
        return failure({},
                       "size " + std::to_string(request.size) + " of \"" + request.file +
                           "\" is not from 1 to " + std::to_string(greatest_size) + " px");
    const FontFile file = read_font_file(request.file);
    if (!file.error.empty()) return failure({}, file.error);
    const OpenFont font(file, request.file, request.size, request.smooth);
    if (!font.error().empty()) return failure({}, font.error());

    std::vector<Drawn> all;
    int top = 0, bottom = 0;
    bool any_ink = false;
    for (const char32_t code : characters) {
        std::optional<Drawn> drawn;
        if (font.has(code)) drawn = font.draw(code);
        if (!drawn || extent_of(*drawn).width == 0) {
            result.missing.push_back(code);
            continue;
        }
        if (drawn->ink.height > 0) {
            top = any_ink ? std::min(top, drawn->top) : drawn->top;
            const int below = drawn->top + drawn->ink.height;
            bottom = any_ink ? std::max(bottom, below) : below;
            any_ink = true;
        }
        const int width = extent_of(*drawn).width;
        if (width > widest_cell || bottom - top > highest_cell)
            return failure(
                std::move(result),
                "\"" + request.file + "\" at size " + std::to_string(request.size) +
                    " is too large: " + name_of_character(code) +
                    (width > widest_cell
                         ? " is " + std::to_string(width) + " px wide"
                         : " makes the cells " + std::to_string(bottom - top) + " px high") +
                    ", at most 255 can be stored");
        all.push_back(std::move(*drawn));
        if (all.size() > most_glyphs)
            return failure(std::move(result),
                           "\"" + request.file + "\" at size " + std::to_string(request.size) +
                               " is asked for more than 255 characters, a face holds at most 255");
    }
    if (all.empty())
        return failure(std::move(result),
                       "font \"" + request.file + "\" has none of the characters that are used");
    if (!any_ink && file.traits.coloured &&
        !std::all_of(all.begin(), all.end(), [](const Drawn& d) { return is_space(d.code); }))
        return failure(
            std::move(result),
            "font \"" + request.file + "\" holds coloured pictures, not characters in one colour");
    if (!any_ink) top = -std::min(font.blank_height(), highest_cell);

    int digit_width = 0;
    for (const Drawn& drawn : all)
        if (lines_up(drawn.code)) digit_width = std::max(digit_width, extent_of(drawn).width);

    RasterFace face{.file = request.file,
                    .size = request.size,
                    .height = bottom - top,
                    .ascent = -top,
                    .glyphs = {},
                    .smooth = request.smooth};
    for (const Drawn& drawn : all) {
        Extent extent = extent_of(drawn);
        int left = extent.before_pen + drawn.left;
        if (request.even_digits && lines_up(drawn.code) && extent.width < digit_width) {
            extent.width = digit_width;
            left = (digit_width - drawn.ink.width) / 2;
        }
        Glyph glyph{drawn.code, blank(extent.width, face.height, face.smooth)};
        if (drawn.ink.width > 0) paste(glyph.cell, drawn.ink, left, drawn.top - top);
        face.glyphs.push_back(std::move(glyph));
    }
    result.face = std::move(face);
    return result;
}

}  // namespace dialplate

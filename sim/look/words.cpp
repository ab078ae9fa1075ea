#include "sim/look/words.hpp"

#include "sim/look/strokes.hpp"

#include <algorithm>

namespace dialplate {
namespace {

const Glyph* glyph_of(const RasterFace& face, char letter) {
    const auto code = static_cast<char32_t>(static_cast<unsigned char>(letter));
    const auto found = std::find_if(
        face.glyphs.begin(), face.glyphs.end(), [code](const Glyph& g) { return g.code == code; });
    return found == face.glyphs.end() ? nullptr : &*found;
}

}  // namespace

int words_width(const RasterFace& face, std::string_view words) {
    int width = 0;
    for (const char letter : words) {
        const Glyph* const glyph = glyph_of(face, letter);
        width += glyph == nullptr ? 0 : glyph->cell.width;
    }
    return width;
}

void write_words(Rgb888& picture,
                 const RasterFace& face,
                 const WordPlace& place,
                 std::string_view words) {
    int left = place.x;
    for (const char letter : words) {
        const Glyph* const glyph = glyph_of(face, letter);
        if (glyph == nullptr) continue;
        const Bitmap& cell = glyph->cell;
        for (int y = 0; y < cell.height; ++y)
            for (int x = 0; x < cell.width; ++x)
                if (cell.ink(x, y))
                    fill(picture,
                         {.x = left + x * place.enlarged,
                          .y = place.y + y * place.enlarged,
                          .width = place.enlarged,
                          .height = place.enlarged},
                         {.colour = place.ink});
        left += cell.width * place.enlarged;
    }
}

}  // namespace dialplate

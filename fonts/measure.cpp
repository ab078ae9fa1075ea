#include "fonts/measure.hpp"

#include "fonts/ink_box.hpp"

#include <algorithm>
#include <string_view>

namespace dialplate {

using namespace fonts;

namespace {

std::optional<int> height_of_first(const RasterFace& face, std::u32string_view in_order) {
    for (const char32_t code : in_order)
        for (const Glyph& glyph : face.glyphs)
            if (glyph.code == code) {
                const InkBox box = ink_box(solid(glyph.cell));
                if (box.height > 0) return box.height;
            }
    return std::nullopt;
}

bool is_letter_or_digit(char32_t code) {
    return (code >= U'0' && code <= U'9') || (code >= U'A' && code <= U'Z') ||
           (code >= U'a' && code <= U'z');
}

}  // namespace

std::optional<int> capital_height(const RasterFace& face) {
    // Flat letters, pointed and round ones (they reach a little past the lines), flat digits, round
    // digits. "J" and "Q" descend in many fonts.
    return height_of_first(face, U"HEIFTLZXKMNDBPRAVWYUSCGO1475238069");
}

std::optional<int> x_height(const RasterFace& face) {
    return height_of_first(face, U"xzvwunmraceos");
}

std::optional<int> stem_width(const RasterFace& face) {
    std::vector<int> runs;
    for (const Glyph& glyph : face.glyphs) {
        if (!is_letter_or_digit(glyph.code)) continue;
        const Bitmap cell = solid(glyph.cell);
        for (int y = 0; y < cell.height; ++y) {
            int run = 0;
            for (int x = 0; x <= cell.width; ++x) {
                if (x < cell.width && cell.ink(x, y)) {
                    ++run;
                } else if (run > 0) {
                    runs.push_back(run);
                    run = 0;
                }
            }
        }
    }
    if (runs.empty()) return std::nullopt;
    const auto middle = runs.begin() + static_cast<std::ptrdiff_t>((runs.size() - 1) / 2);
    std::nth_element(runs.begin(), middle, runs.end());
    return *middle;
}

}  // namespace dialplate

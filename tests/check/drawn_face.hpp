// Faces drawn in the tests themselves, so that what a rule measures can be counted by hand.
#pragma once

#include "tests/check/sample.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace dialplate::sample {

/// Gives the sample's face "words" no glyphs and no measures but those drawn from here on.
inline void begin_face(Sample& s, int capital) {
    s.image.rasters.assign(1, {});
    s.image.measures = {{.face = Sample::words, .capital = capital, .x_height = std::nullopt}};
    s.layout.faces[0].pointer = "/faces/words";
}

/// One glyph, a row a text: '#' is ink, anything else ground. All rows are equally long.
inline void draw(Sample& s, char32_t code, const std::vector<std::string>& rows) {
    Glyph glyph;
    glyph.code = code;
    glyph.cell.width = static_cast<int>(rows.at(0).size());
    glyph.cell.height = static_cast<int>(rows.size());
    for (const std::string& row : rows)
        for (const char c : row)
            glyph.cell.pixels.push_back(c == '#' ? 1 : 0);
    RasterFace& face = s.image.rasters.at(0);
    face.height = std::max(face.height, glyph.cell.height);
    face.glyphs.push_back(glyph);
    std::sort(face.glyphs.begin(), face.glyphs.end(), [](const Glyph& a, const Glyph& b) {
        return a.code < b.code;
    });
}

/// An "H" of that ink, with blank columns on both sides.
struct Upright {
    int width = 0, height = 0, stroke = 1;
    int blank_left = 0, blank_right = 0;
};
inline void draw_h(Sample& s, const Upright& h, char32_t code = U'H') {
    std::vector<std::string> rows;
    for (int y = 0; y < h.height; ++y) {
        std::string row(static_cast<std::size_t>(h.width), '.');
        for (int x = 0; x < h.width; ++x)
            if (x < h.stroke || x >= h.width - h.stroke || y == h.height / 2)
                row[static_cast<std::size_t>(x)] = '#';
        rows.push_back(std::string(static_cast<std::size_t>(h.blank_left), '.') + row +
                       std::string(static_cast<std::size_t>(h.blank_right), '.'));
    }
    draw(s, code, rows);
}

}  // namespace dialplate::sample

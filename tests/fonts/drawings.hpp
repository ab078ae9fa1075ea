// Bitmaps written as text, fonts to test with, and a BDF file made from text.
#pragma once

#include "fonts/face.hpp"

#include <filesystem>
#include <fstream>
#include <initializer_list>
#include <random>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

inline bool operator==(const Bitmap& a, const Bitmap& b) {
    return a.width == b.width && a.height == b.height && a.pixels == b.pixels;
}

/// Rows of '#' for ink and '.' for ground.
inline Bitmap drawing(std::initializer_list<std::string_view> rows) {
    Bitmap bitmap{rows.size() == 0 ? 0 : static_cast<int>(rows.begin()->size()),
                  static_cast<int>(rows.size()),
                  {}};
    for (const std::string_view row : rows)
        for (const char c : row)
            bitmap.pixels.push_back(c == '#' ? 1 : 0);
    return bitmap;
}

/// The same, for failures that one can look at.
inline std::string text_of(const Bitmap& bitmap) {
    std::string text;
    for (int y = 0; y < bitmap.height; ++y) {
        text += '\n';
        for (int x = 0; x < bitmap.width; ++x)
            text += bitmap.ink(x, y) ? '#' : '.';
    }
    return text;
}

inline void PrintTo(const Bitmap& bitmap, std::ostream* out) {
    *out << bitmap.width << " x " << bitmap.height << text_of(bitmap);
}

/// A face of cells of one height, glyphs "A", "B", ... or from `first`.
inline RasterFace face_of(const std::vector<Bitmap>& cells, char32_t first = U'A') {
    RasterFace face{.file = "drawn here",
                    .size = cells.front().height,
                    .height = cells.front().height,
                    .ascent = cells.front().height,
                    .glyphs = {}};
    for (const Bitmap& cell : cells)
        face.glyphs.push_back({first++, cell});
    return face;
}

inline std::vector<const Bitmap*> cells_of(const RasterFace& face) {
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : face.glyphs)
        cells.push_back(&glyph.cell);
    return cells;
}

/// Every chance one half.
inline ContextTable even_chances() {
    ContextTable table;
    table.fill(128);
    return table;
}

/// Blobs: each pixel mostly continues what is left of it or above it, as glyphs do.
inline Bitmap random_blobs(std::mt19937& random, int width, int height) {
    Bitmap bitmap{width, height, {}};
    for (int y = 0; y < height; ++y)
        for (int x = 0; x < width; ++x) {
            const auto choice = random() % 16;
            const bool left = x > 0 && bitmap.pixels.back() != 0;
            const bool above = y > 0 && bitmap.ink(x, y - 1);
            const bool ink = choice < 11 ? above : choice < 15 ? left : (random() & 1) != 0;
            bitmap.pixels.push_back(ink ? 1 : 0);
        }
    return bitmap;
}

inline std::u32string ascii() {
    std::u32string all;
    for (char32_t code = 32; code < 127; ++code)
        all += code;
    return all;
}

inline const std::string dejavu = "/usr/share/fonts/truetype/dejavu/";
inline const std::string liberation = "/usr/share/fonts/truetype/liberation/";
inline const std::string b612 = "/usr/share/fonts/opentype/b612/";

inline std::string scratch_file(const std::string& name, std::string_view content) {
    const std::filesystem::path directory = std::filesystem::path(DIALPLATE_OUT) / "fonts";
    std::filesystem::create_directories(directory);
    const std::string path = (directory / name).string();
    std::ofstream(path, std::ios::binary) << content;
    return path;
}

/// A character of a BDF file: its corner from the pen (y upwards), and its rows.
struct BdfGlyph {
    int code, advance, left, bottom;
    std::vector<std::string_view> rows;
};

/// Source: Glyph Bitmap Distribution Format 2.2 (Adobe, 5005).
inline std::string bdf(int pixel_size,
                       int ascent,
                       int descent,
                       const std::vector<BdfGlyph>& glyphs) {
    std::ostringstream out;
    out << "STARTFONT 2.1\nFONT -own-sample-medium-r-normal--" << pixel_size
        << "-0-72-72-c-0-iso10646-1\nSIZE " << pixel_size << " 72 72\nFONTBOUNDINGBOX 8 "
        << ascent + descent << " 0 -" << descent << "\nSTARTPROPERTIES 5\nPIXEL_SIZE " << pixel_size
        << "\nFONT_ASCENT " << ascent << "\nFONT_DESCENT " << descent
        << "\nCHARSET_REGISTRY \"ISO10646\"\nCHARSET_ENCODING \"1\"\nENDPROPERTIES\nCHARS "
        << glyphs.size() << '\n';
    for (const BdfGlyph& glyph : glyphs) {
        const std::size_t width = glyph.rows.empty() ? 0 : glyph.rows.front().size();
        out << "STARTCHAR c" << glyph.code << "\nENCODING " << glyph.code
            << "\nSWIDTH 500 0\nDWIDTH " << glyph.advance << " 0\nBBX " << width << ' '
            << glyph.rows.size() << ' ' << glyph.left << ' ' << glyph.bottom << "\nBITMAP\n";
        for (const std::string_view row : glyph.rows) {
            for (std::size_t x = 0; x < width; x += 4) {
                int digit = 0;
                for (std::size_t bit = 0; bit < 4; ++bit)
                    digit = digit * 2 + (x + bit < width && row[x + bit] == '#' ? 1 : 0);
                out << "0123456789ABCDEF"[digit];
            }
            if (((width + 3) / 4) % 2 != 0) out << '0';  // rows are whole bytes
            out << '\n';
        }
        out << "ENDCHAR\n";
    }
    out << "ENDFONT\n";
    return out.str();
}

}  // namespace dialplate

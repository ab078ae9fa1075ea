// Faces held against the FreeType library itself: glyph bitmaps, their places, advances, and the cells
// that follow from them.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"

#include <gtest/gtest.h>

#include <ft2build.h>
#include FT_FREETYPE_H

#include <algorithm>

namespace dialplate {
namespace {

// A glyph as FreeType gives it; rows and columns from the pen, y downwards.
struct Reference {
    char32_t code = 0;
    int advance = 0, left = 0, top = 0;
    Bitmap ink;  // may have blank edges
};

class FreeType {
public:
    FreeType() { EXPECT_EQ(FT_Init_FreeType(&library_), 0); }
    ~FreeType() { FT_Done_FreeType(library_); }
    FreeType(const FreeType&) = delete;
    FreeType& operator=(const FreeType&) = delete;

    // FreeType 2 API Reference: FT_LOAD_TARGET_MONO, "a strong hinting algorithm that should only be used
    // for monochrome output"; FT_RENDER_MODE_MONO.
    std::vector<Reference> draw(const FaceRequest& request) {
        FT_Face face = nullptr;
        EXPECT_EQ(FT_New_Face(library_, request.file.c_str(), 0, &face), 0) << request.file;
        if (face == nullptr) return {};
        if (FT_IS_SCALABLE(face)) {
            EXPECT_EQ(FT_Set_Pixel_Sizes(face, 0, static_cast<FT_UInt>(request.size)), 0);
        } else {
            EXPECT_EQ(FT_Select_Size(face, 0), 0);
        }
        std::vector<Reference> all;
        for (const char32_t code : request.characters) {
            if (FT_Get_Char_Index(face, code) == 0) continue;
            EXPECT_EQ(FT_Load_Char(face, code, FT_LOAD_TARGET_MONO), 0);
            EXPECT_EQ(FT_Render_Glyph(face->glyph, FT_RENDER_MODE_MONO), 0);
            const FT_GlyphSlot slot = face->glyph;
            Reference one{
                .code = code,
                .advance = static_cast<int>((slot->advance.x + 63) / 64),
                .left = slot->bitmap_left,
                .top = -slot->bitmap_top,
                .ink = {
                    static_cast<int>(slot->bitmap.width), static_cast<int>(slot->bitmap.rows), {}}};
            for (int y = 0; y < one.ink.height; ++y)
                for (int x = 0; x < one.ink.width; ++x) {
                    const unsigned char byte = slot->bitmap.buffer[y * slot->bitmap.pitch + x / 8];
                    one.ink.pixels.push_back((byte >> (7 - x % 8)) & 1);
                }
            all.push_back(std::move(one));
        }
        FT_Done_Face(face);
        return all;
    }

private:
    FT_Library library_ = nullptr;
};

// The face that the references must give, built pixel by pixel. `size` keeps it apart from face.hpp:
// nothing of the room is called.
struct Edges {
    int left = 1 << 20, right = -(1 << 20), top = 1 << 20, bottom = -(1 << 20);
};

Edges edges_of(const Reference& one) {
    Edges edges;
    for (int y = 0; y < one.ink.height; ++y)
        for (int x = 0; x < one.ink.width; ++x)
            if (one.ink.ink(x, y)) {
                edges.left = std::min(edges.left, one.left + x);
                edges.right = std::max(edges.right, one.left + x + 1);
                edges.top = std::min(edges.top, one.top + y);
                edges.bottom = std::max(edges.bottom, one.top + y + 1);
            }
    return edges;
}

void expect_the_face_of(FreeType& freetype, const FaceRequest& request) {
    SCOPED_TRACE(request.file + " at " + std::to_string(request.size));
    const std::vector<Reference> references = freetype.draw(request);
    const FaceResult result = rasterise(request);
    ASSERT_TRUE(result.face.has_value()) << result.error;
    ASSERT_EQ(result.face->glyphs.size(), references.size());

    int top = 1 << 20, bottom = -(1 << 20);
    for (const Reference& one : references) {
        top = std::min(top, edges_of(one).top);
        bottom = std::max(bottom, edges_of(one).bottom);
    }
    ASSERT_EQ(result.face->ascent, -top);
    ASSERT_EQ(result.face->height, bottom - top);

    for (std::size_t i = 0; i < references.size(); ++i) {
        const Reference& one = references[i];
        const Edges edges = edges_of(one);
        const bool blank = edges.left > edges.right;
        const int pen = blank ? 0 : std::max(0, -edges.left);
        const int width = pen + (blank ? one.advance : std::max(one.advance, edges.right));
        Bitmap cell{width, bottom - top, {}};
        for (int y = 0; y < cell.height; ++y)
            for (int x = 0; x < cell.width; ++x) {
                const int column = x - pen - one.left, row = y + top - one.top;
                const bool inside =
                    column >= 0 && column < one.ink.width && row >= 0 && row < one.ink.height;
                cell.pixels.push_back(inside && one.ink.ink(column, row) ? 1 : 0);
            }
        ASSERT_EQ(result.face->glyphs[i].code, one.code);
        ASSERT_EQ(result.face->glyphs[i].cell, cell) << "U+" << std::hex << unsigned{one.code};
    }
}

class RasterisedFont : public testing::TestWithParam<std::string> {};

TEST_P(RasterisedFont, HasTheBitmapsOfFreeTypeAtEverySizeAndComesBackFromBothPackings) {
    FreeType freetype;
    for (int size = 8; size <= 72; size += size < 24 ? 1 : 3) {
        const FaceRequest request{.file = GetParam(), .size = size, .characters = ascii()};
        expect_the_face_of(freetype, request);
        if (HasFatalFailure()) return;

        const RasterFace face = *rasterise(request).face;
        std::vector<Bitmap> cells;
        for (const Glyph& glyph : face.glyphs)
            cells.push_back(glyph.cell);
        for (const Packing packing : {Packing::plain, Packing::runs})
            ASSERT_EQ(unpack(pack(face, packing, 1)), cells) << "size " << size;
    }
}

// Hinted TrueType and CFF outlines, upright and slanted (ink outside the advance), narrow and wide.
INSTANTIATE_TEST_SUITE_P(DebianFonts,
                         RasterisedFont,
                         testing::Values(dejavu + "DejaVuSans.ttf",
                                         dejavu + "DejaVuSans-Bold.ttf",
                                         dejavu + "DejaVuSansMono-Bold.ttf",
                                         dejavu + "DejaVuSerif.ttf",
                                         liberation + "LiberationSans-Bold.ttf",
                                         liberation + "LiberationSansNarrow-Regular.ttf",
                                         liberation + "LiberationSerif-BoldItalic.ttf",
                                         liberation + "LiberationMono-Regular.ttf",
                                         b612 + "B612-Bold.otf",
                                         b612 + "B612-Italic.otf",
                                         b612 + "B612Mono-Regular.otf"),
                         [](const testing::TestParamInfo<std::string>& row) {
                             std::string name = std::filesystem::path(row.param).stem().string();
                             std::erase_if(name, [](unsigned char c) { return !std::isalnum(c); });
                             return name;
                         });

TEST(Rasterise, HasTheBitmapsOfFreeTypeAboveTheAscender) {
    // Capitals with two marks stand higher than the line; the surface that they come in starts higher.
    FreeType freetype;
    for (const int size : {9, 16, 40})
        expect_the_face_of(freetype,
                           {.file = dejavu + "DejaVuSans.ttf",
                            .size = size,
                            .characters = U"H\u00C5\u00D1\u0126\u1EA4\u1EA8\u1EDB\u2126"});
}

TEST(Rasterise, HasTheBitmapsOfFreeTypeForTheFacesDrawnHere) {
    FreeType freetype;
    int faces = 0;
    for (const auto& entry : std::filesystem::directory_iterator(DIALPLATE_TREE "/fonts")) {
        if (entry.path().extension() != ".bdf") continue;
        ++faces;
        // PIXEL_SIZE is in the file's name: legend9.bdf.
        const std::string name = entry.path().stem().string();
        const int size = std::stoi(name.substr(name.find_first_of("0123456789")));
        expect_the_face_of(freetype,
                           {.file = entry.path().string(), .size = size, .characters = ascii()});
    }
    EXPECT_GE(faces, 2);
}

}  // namespace
}  // namespace dialplate

// Heights and strokes against the outlines in the fonts, and on letters drawn here.
#include "fonts/measure.hpp"

#include "tests/fonts/drawings.hpp"

#include <gtest/gtest.h>

#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_BBOX_H

#include <optional>

namespace dialplate {
namespace {

// Width and height of a glyph's outline in ems, as FreeType reads it from the file: unscaled, unhinted.
struct Outline {
    double width = 0, height = 0;
};

Outline outline_of(const std::string& file, char32_t code) {
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    Outline outline;
    EXPECT_EQ(FT_Init_FreeType(&library), 0);
    EXPECT_EQ(FT_New_Face(library, file.c_str(), 0, &face), 0) << file;
    if (face != nullptr) {
        EXPECT_EQ(FT_Load_Char(face, code, FT_LOAD_NO_SCALE), 0);
        FT_BBox box;
        EXPECT_EQ(FT_Outline_Get_BBox(&face->glyph->outline, &box), 0);
        const double em = face->units_per_EM;
        outline = {static_cast<double>(box.xMax - box.xMin) / em,
                   static_cast<double>(box.yMax - box.yMin) / em};
        FT_Done_Face(face);
    }
    FT_Done_FreeType(library);
    return outline;
}

TEST(Measure, FindsTheHeightsOfTheOutlines) {
    for (const std::string& file : {dejavu + "DejaVuSans.ttf",
                                    dejavu + "DejaVuSerif-Bold.ttf",
                                    liberation + "LiberationSans-Regular.ttf",
                                    b612 + "B612-Regular.otf"}) {
        const double capital = outline_of(file, U'H').height, x = outline_of(file, U'x').height;
        for (int size = 10; size <= 72; size += 3) {
            SCOPED_TRACE(file + " at " + std::to_string(size));
            const FaceResult result =
                rasterise({.file = file, .size = size, .characters = ascii()});
            ASSERT_TRUE(result.face.has_value()) << result.error;
            // Mono hinting moves a height to whole pixels, and may pick the further of the two.
            EXPECT_NEAR(capital_height(*result.face).value_or(0), capital * size, 1.0);
            EXPECT_NEAR(x_height(*result.face).value_or(0), x * size, 1.0);
        }
    }
}

RasterFace face_with(const std::vector<std::pair<char32_t, Bitmap>>& glyphs) {
    RasterFace face{.file = "drawn here",
                    .size = 6,
                    .height = glyphs.front().second.height,
                    .ascent = 5,
                    .glyphs = {}};
    for (const auto& [code, cell] : glyphs)
        face.glyphs.push_back({code, cell});
    return face;
}

const Bitmap flat = drawing({"......",  //
                             "##..##",
                             "##..##",
                             "######",
                             "##..##",
                             "......"});
const Bitmap round_one = drawing({".####.",  //
                                  "##..##",
                                  "##..##",
                                  "##..##",
                                  ".####.",
                                  "......"});
const Bitmap dash = drawing({"......",  //
                             "......",
                             "......",
                             "######",
                             "......",
                             "......"});

TEST(Measure, TakesAFlatLetterBeforeARoundOneAndALetterBeforeADigit) {
    EXPECT_EQ(capital_height(face_with({{U'H', flat}, {U'O', round_one}})), 4);
    EXPECT_EQ(capital_height(face_with({{U'O', round_one}})), 5);
    EXPECT_EQ(capital_height(face_with({{U'0', round_one}, {U'H', flat}})), 4);
    EXPECT_EQ(capital_height(face_with({{U'0', round_one}})), 5);
    EXPECT_EQ(x_height(face_with({{U'o', round_one}, {U'x', flat}})), 4);
}

TEST(Measure, HasNothingToSayWithoutLettersAndDigits) {
    const RasterFace face = face_with({{U'-', dash}, {U' ', drawing({"......"})}});
    EXPECT_EQ(capital_height(face), std::nullopt);
    EXPECT_EQ(x_height(face), std::nullopt);
    EXPECT_EQ(stem_width(face), std::nullopt);
    EXPECT_EQ(x_height(face_with({{U'H', flat}})), std::nullopt);
}

TEST(Measure, TakesTheMedianRunOfInkForTheWidthOfAStem) {
    // flat: 2 2 | 2 2 | 6 | 2 2; the dash counts nowhere.
    EXPECT_EQ(stem_width(face_with({{U'H', flat}, {U'-', dash}})), 2);
}

TEST(Measure, FindsTheStrokeOfTheOutlines) {
    // "I" of a face without serifs is one upright stroke. Hinting moves it to whole pixels.
    for (const char* name : {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"}) {
        const std::string file = dejavu + name;
        const double stroke = outline_of(file, U'I').width;
        for (const int size : {20, 40, 60}) {
            SCOPED_TRACE(file + " at " + std::to_string(size));
            const RasterFace face =
                *rasterise({.file = file, .size = size, .characters = U"HILTEN0147"}).face;
            EXPECT_NEAR(stem_width(face).value_or(0), stroke * size, 1.0);
        }
    }
}

}  // namespace
}  // namespace dialplate

// What rasterise makes of requests, usual and unusual.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <thread>

namespace dialplate {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

// Ascent 5, descent 3. "g" reaches one column left of the pen, "W" one right of its advance.
std::string sample_font() {
    return scratch_file("sample.bdf",
                        bdf(8,
                            5,
                            3,
                            {{' ', 3, 0, 0, {"."}},
                             {'-', 4, 0, 2, {"##"}},
                             {'1', 4, 1, 0, {".#.", "##.", ".#.", ".#.", "###"}},
                             {'2', 6, 1, 0, {"###", "..#", "###", "#..", "###"}},
                             {'W', 4, 0, 0, {"#...#", "#.#.#", ".#.#."}},
                             {'g', 5, -1, -2, {".###", "#..#", ".###", "...#", ".##."}}}));
}

RasterFace rasterised(const FaceRequest& request) {
    const FaceResult result = rasterise(request);
    EXPECT_THAT(result.error, IsEmpty());
    return result.face.value_or(RasterFace{});
}

TEST(Rasterise, DrawsCellsFromTheHighestToTheLowestInkOfTheSet) {
    const RasterFace face = rasterised({.file = sample_font(), .size = 8, .characters = U"1g"});
    EXPECT_EQ(face.height, 7) << "5 rows above the baseline, 2 below";
    EXPECT_EQ(face.ascent, 5);
    ASSERT_EQ(face.glyphs.size(), 2U);
    EXPECT_EQ(face.glyphs[0].code, U'1');
    EXPECT_EQ(face.glyphs[0].cell,
              drawing({"..#.",  //
                       ".##.",
                       "..#.",
                       "..#.",
                       ".###",
                       "....",
                       "...."}));
    EXPECT_EQ(face.glyphs[1].cell,
              drawing({"......",  // one column wider: the ink left of the pen
                       "......",
                       ".###..",
                       "#..#..",
                       ".###..",
                       "...#..",
                       ".##..."}));
}

TEST(Rasterise, StoresNoRowsThatNoCharacterOfTheSetUses) {
    const RasterFace face = rasterised({.file = sample_font(), .size = 8, .characters = U"-W "});
    EXPECT_EQ(face.height, 3);
    EXPECT_EQ(face.ascent, 3);
    EXPECT_EQ(face.glyphs[0].cell, drawing({"...", "...", "..."}));
    EXPECT_EQ(face.glyphs[1].cell, drawing({"##..", "....", "...."}));
    EXPECT_EQ(face.glyphs[2].cell, drawing({"#...#", "#.#.#", ".#.#."}))
        << "ink right of the advance widens the cell";
}

TEST(Rasterise, OrdersByCodePointAndTakesRepeatsOnce) {
    const RasterFace face = rasterised({.file = sample_font(), .size = 8, .characters = U"g21g2"});
    ASSERT_EQ(face.glyphs.size(), 3U);
    EXPECT_EQ(face.glyphs[0].code, U'1');
    EXPECT_EQ(face.glyphs[1].code, U'2');
    EXPECT_EQ(face.glyphs[2].code, U'g');
}

TEST(Rasterise, GivesDigitsAndMinusOneAdvanceWhenAsked) {
    const RasterFace face =
        rasterised({.file = sample_font(), .size = 8, .characters = U" -12", .even_digits = true});
    // The widest is "2" with 6; "-" has 2 columns of ink, "1" 3: two and one before it.
    EXPECT_EQ(face.glyphs[0].cell.width, 3) << "a blank is no digit";
    EXPECT_EQ(face.glyphs[1].cell, drawing({"......", "......", "..##..", "......", "......"}));
    EXPECT_EQ(face.glyphs[2].cell, drawing({"..#...", ".##...", "..#...", "..#...", ".###.."}));
    EXPECT_EQ(face.glyphs[3].cell, drawing({".###..", "...#..", ".###..", ".#....", ".###.."}));
}

TEST(Rasterise, LeavesDigitsAsTheyAreDrawnOtherwise) {
    const RasterFace face = rasterised({.file = sample_font(), .size = 8, .characters = U"-12"});
    EXPECT_EQ(face.glyphs[0].cell.width, 4);
    EXPECT_EQ(face.glyphs[1].cell.width, 4);
    EXPECT_EQ(face.glyphs[2].cell.width, 6);
}

TEST(Rasterise, GivesBlanksTheHeightOfACapital) {
    // DejaVu Sans: capitals are 1493/2048 of the em (OS/2 sCapHeight), 14.6 px at 20.
    const RasterFace space =
        rasterised({.file = dejavu + "DejaVuSans.ttf", .size = 20, .characters = U" "});
    EXPECT_THAT(space.height, testing::AllOf(testing::Ge(14), testing::Le(15)));
    EXPECT_EQ(space.ascent, space.height);
    // Without an H: the ascent.
    EXPECT_EQ(rasterised({.file = sample_font(), .size = 8, .characters = U" "}).height, 5);
}

TEST(Rasterise, NamesTheCharactersThatTheFontLacks) {
    const FaceResult result =
        rasterise({.file = sample_font(),
                   .size = 8,
                   .characters = {U'Z', U'1', U'\u2126', U'\0', 0xD800, 0x110000}});
    ASSERT_TRUE(result.face.has_value());
    EXPECT_EQ(result.face->glyphs.size(), 1U);
    EXPECT_THAT(result.missing, ElementsAre(U'\0', U'Z', U'\u2126', 0xD800, 0x110000));
    EXPECT_THAT(result.error, IsEmpty());
}

TEST(Rasterise, TakesCharactersWithoutWidthForMissing) {
    // U+200B ZERO WIDTH SPACE: DejaVu Sans has it, and nothing of it can be shown.
    const FaceResult result =
        rasterise({.file = dejavu + "DejaVuSans.ttf", .size = 20, .characters = U"A\u200B"});
    ASSERT_TRUE(result.face.has_value());
    EXPECT_EQ(result.face->glyphs.size(), 1U);
    EXPECT_THAT(result.missing, ElementsAre(U'\u200B'));
}

TEST(Rasterise, KeepsTheInkOfCombiningMarksInsideTheirCells) {
    // U+0301 has no advance and its ink left of the pen.
    const RasterFace face =
        rasterised({.file = dejavu + "DejaVuSans.ttf", .size = 40, .characters = U"\u0301"});
    ASSERT_EQ(face.glyphs.size(), 1U);
    EXPECT_GT(face.glyphs[0].cell.width, 4);
    EXPECT_THAT(face.glyphs[0].cell.pixels, testing::Contains(1));
}

TEST(Rasterise, FindsABdfStrikeByHeightOrPixelSize) {
    // Height is FONT_ASCENT + FONT_DESCENT = 9, PIXEL_SIZE is 7.
    const std::string path =
        scratch_file("strike.bdf", bdf(7, 6, 3, {{'1', 4, 1, 0, {".#.", "##.", "###"}}}));
    EXPECT_TRUE(rasterise({.file = path, .size = 9, .characters = U"1"}).face.has_value());
    EXPECT_TRUE(rasterise({.file = path, .size = 7, .characters = U"1"}).face.has_value());
    const FaceResult other = rasterise({.file = path, .size = 8, .characters = U"1"});
    EXPECT_FALSE(other.face.has_value());
    EXPECT_THAT(other.error, HasSubstr("drawn for a size of 9 px, not 8 px"));
}

TEST(Rasterise, SaysWhyThereIsNoFace) {
    const std::string text = scratch_file("text.ttf", "this is not a font");
    const std::string empty = scratch_file("empty.ttf", "");
    // A table directory with one table of coloured bitmaps and no outlines.
    const std::string coloured = scratch_file(
        "coloured.ttf", std::string("\0\1\0\0\0\1\0\0\0\0\0\0CBDT\0\0\0\0\0\0\0\x1C\0\0\0\0", 28));
    const std::string sans = dejavu + "DejaVuSans.ttf";
    struct Row {
        FaceRequest request;
        const char* expected;
    };
    const Row rows[] = {
        {{.file = "no/such.ttf", .size = 12, .characters = U"1"}, "there is no such file"},
        {{.file = dejavu, .size = 12, .characters = U"1"}, "it is not a file"},
        {{.file = "", .size = 12, .characters = U"1"}, "there is no such file"},
        {{.file = empty, .size = 12, .characters = U"1"}, "it is empty"},
        {{.file = text, .size = 12, .characters = U"1"}, "is not a font"},
        {{.file = coloured, .size = 12, .characters = U"1"}, "coloured pictures"},
        {{.file = sans, .size = 0, .characters = U"1"}, "not from 1 to 1020 px"},
        {{.file = sans, .size = -3, .characters = U"1"}, "not from 1 to 1020 px"},
        {{.file = sans, .size = 1021, .characters = U"1"}, "not from 1 to 1020 px"},
        {{.file = sans, .size = 400, .characters = U"1"}, "\"1\" makes the cells 292 px high"},
        {{.file = sans, .size = 260, .characters = U"W"}, "\"W\" is 257 px wide"},
        {{.file = sans, .size = 400, .characters = U"\u2126"}, "U+2126 is 306 px wide"},
        {{.file = sans, .size = 12, .characters = U""}, "no characters are asked"},
        {{.file = sans, .size = 12, .characters = U"\uE123"}, "none of the characters"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.expected);
        const FaceResult result = rasterise(row.request);
        EXPECT_FALSE(result.face.has_value());
        EXPECT_THAT(result.error, HasSubstr(row.expected));
    }
}

TEST(Rasterise, RefusesMoreCharactersThanAFaceCanHold) {
    std::u32string many;
    for (char32_t code = 0x4E00; code < 0x4E00 + 400; ++code)
        many += code;
    for (char32_t code = 0x100; code < 0x100 + 256; ++code)
        many += code;
    const FaceResult result =
        rasterise({.file = dejavu + "DejaVuSans.ttf", .size = 12, .characters = many});
    EXPECT_FALSE(result.face.has_value());
    EXPECT_THAT(result.error, HasSubstr("at most 255"));
}

TEST(Rasterise, FitsACellOfExactlyTwoHundredAndFiftyFiveRows) {
    std::vector<std::string> bars(255, "##");
    std::vector<std::string_view> rows(bars.begin(), bars.end());
    const std::string fits = scratch_file("rows255.bdf", bdf(255, 255, 0, {{'|', 3, 0, 0, rows}}));
    EXPECT_EQ(rasterised({.file = fits, .size = 255, .characters = U"|"}).height, 255);
    rows.push_back("##");
    const std::string tall = scratch_file("rows256.bdf", bdf(255, 256, 0, {{'|', 3, 0, 0, rows}}));
    EXPECT_THAT(rasterise({.file = tall, .size = 255, .characters = U"|"}).error,
                HasSubstr("256 px high, at most 255"));
}

TEST(Rasterise, GivesTheSameFaceEveryTimeAndFromEveryThread) {
    const FaceRequest request{
        .file = dejavu + "DejaVuSerif-Bold.ttf", .size = 23, .characters = ascii()};
    const auto expected = pack(rasterised(request), Packing::plain, 1).bytes;
    std::vector<std::vector<std::uint8_t>> seen(4);
    std::vector<std::thread> threads;
    for (auto& bytes : seen)
        threads.emplace_back([&bytes, &request] {
            for (int i = 0; i < 5; ++i)
                bytes = pack(*rasterise(request).face, Packing::plain, 1).bytes;
        });
    for (std::thread& thread : threads)
        thread.join();
    for (const auto& bytes : seen)
        EXPECT_EQ(bytes, expected);
}

}  // namespace
}  // namespace dialplate

// The bytes of small faces and pictures, worked out by hand from ui/image.md.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"
#include "ui/image_format.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace dialplate {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const Bitmap small_tree = drawing({".#.",  //
                                   ".#.",
                                   "###"});

TEST(PlainFace, IsAHeaderThenPlacesThenCroppedBits) {
    // Box of ink: 3 x 3 at (0, 0). Bits 010 010 111 = 0100 1011 1... = 4B 80.
    EXPECT_THAT(pack(face_of({small_tree}, U'1'), Packing::plain, 2).bytes,
                ElementsAre(0x00,
                            3,
                            2,
                            1,
                            3,
                            0x00,  // plain, height, enlarged, glyphs, digit, -
                            8,
                            0,  // the glyph starts at 6 + 2
                            3,
                            0,
                            0,
                            3,
                            3,
                            0x4B,
                            0x80));  // advance, left, top, w, h, bits
}

TEST(PlainFace, StoresNoGroundAroundTheInk) {
    // The ink is a 2 x 2 box at (1, 2): bits 10 11 = B0.
    const Bitmap cell = drawing({"....",  //
                                 "....",
                                 ".#..",
                                 ".##.",
                                 "...."});
    EXPECT_THAT(pack(face_of({cell}), Packing::plain, 1).bytes,
                ElementsAre(0x00, 5, 1, 1, 0x00, 0, 8, 0, 4, 1, 2, 2, 2, 0xB0));
}

TEST(PlainFace, StoresABlankAsMetricsAlone) {
    EXPECT_THAT(pack(face_of({drawing({"....", "...."})}, U' '), Packing::plain, 1).bytes,
                ElementsAre(0x00, 2, 1, 1, 0x00, 0, 8, 0, 4, 0, 0, 0, 0));
}

TEST(RunsFace, FlagsRepeatedRowsAndCodesTheOthers) {
    // k = 0 for both: n ones and a zero. Row 0: runs 1 1 1 = 10 10 10. Row 1: repeated = 1. Row 2: not
    // = 0, runs 0 3 = 0 1110. Together 1010 1010 0111 0... = AA 70; no other k gets it into one byte.
    EXPECT_THAT(pack(face_of({small_tree}, U'1'), Packing::runs, 1).bytes,
                ElementsAre(0x01, 3, 1, 1, 3, 0x00, 8, 0, 3, 0xAA, 0x70));
}

TEST(RunsFace, TakesTheRiceParametersThatMakeItSmallest) {
    // Runs 5 7. White: k = 0 6 bits, k = 1 (110 1) 4 bits. Black: k = 0 8 bits, k = 1 5, k = 2 (10 11)
    // 4 bits. One byte only with 4 + 4: white 1, black 2 are the first pair. 1101 1011 = DB.
    EXPECT_THAT(pack(face_of({drawing({".....#######"})}), Packing::runs, 4).bytes,
                ElementsAre(0x01, 1, 4, 1, 0, 0x21, 8, 0, 12, 0xDB));
}

TEST(RunsFace, StartsARowOfInkWithAnEmptyRunOfGround) {
    // k = 0: run 0 = 0, run 2 = 110; then 1 for the repeated row: 0110 1... = 68.
    EXPECT_THAT(pack(face_of({drawing({"##", "##"})}), Packing::runs, 1).bytes,
                ElementsAre(0x01, 2, 1, 1, 0x00, 0, 8, 0, 2, 0x68));
}

// Cells of ground, every chance one half: the stream is 127, a number from 127 below 255 (context_test.cpp). Streams
// have 0 or 1 byte: of 256, two lengths are to be below 224, so lengths is 256 x 2 / 224 rounded up, 3. A byte m is the
// least with m x 3 = 256 x length + rest, rest x widths = 256 x columns + something.
TEST(ContextFace, HasLengthAndColumnsOfAGlyphInAByteInFrontOfIt) {
    ContextTable even;
    even.fill(128);
    const auto ground = [](int columns) {
        return Bitmap{columns, 1, std::vector<std::uint8_t>(static_cast<std::size_t>(columns))};
    };
    // 86 x 3 = 256 + 2.
    EXPECT_THAT(pack_context(face_of({ground(1)}), even, 1).bytes,
                ElementsAre(0x02, 1, 1, 1, 1, 3, 1, 86, 127));
    // Second glyph: 128 x 3 = 256 + 128, 128 x 2 = 256. The first borrows the 128 and needs no byte of its own.
    EXPECT_THAT(pack_context(face_of({ground(1), ground(2)}), even, 1).bytes,
                ElementsAre(0x02, 1, 1, 2, 1, 3, 2, 0, 128, 127));
    // 85 widths at a time; 99 columns more are six times 15 and 9. 255 cannot be borrowed.
    EXPECT_THAT(
        pack_context(face_of({ground(1), ground(100)}), even, 1).bytes,
        ElementsAre(0x02, 1, 1, 2, 1, 3, 85, 86, 127, 255, 255, 255, 255, 255, 255, 249, 86, 127));
}

TEST(Faces, ShareTheBytesOfGlyphsThatLookTheSame) {
    const Bitmap bar = drawing({"##"});
    // A, B, A: the third place is the first again.
    EXPECT_THAT(pack(face_of({bar, drawing({".#"}), bar}), Packing::plain, 1).bytes,
                ElementsAre(0x00,
                            1,
                            1,
                            3,
                            0x00,
                            0,
                            12,
                            0,
                            18,
                            0,
                            12,
                            0,  //
                            2,
                            0,
                            0,
                            2,
                            1,
                            0xC0,  //
                            2,
                            1,
                            0,
                            1,
                            1,
                            0x80));
}

TEST(Faces, NameTheWidestDigitAsTheirDigitAdvance) {
    const RasterFace face = face_of({drawing({"#."}), drawing({"##."})}, U'8');
    EXPECT_EQ(pack(face, Packing::plain, 1).bytes[face::advance], 3);
    EXPECT_EQ(pack(face, Packing::runs, 1).bytes[face::advance], 3);
}

TEST(Faces, ThatDoNotFitTheFormatGiveNoBytes) {
    const Bitmap dot = drawing({"#"});
    std::mt19937 random(1);
    std::vector<Bitmap> noise;  // 9 x 65,025 bits exceed 65,535 bytes in any packing
    for (int i = 0; i < 9; ++i) {
        noise.push_back(Bitmap{255, 255, {}});
        for (int pixel = 0; pixel < 255 * 255; ++pixel)
            noise.back().pixels.push_back(random() & 1);
    }
    RasterFace uneven = face_of({dot});
    uneven.height = 2;
    struct Row {
        const char* source;
        RasterFace face;
        int enlarged;
    };
    const Row rows[] = {
        {"enlarged is 1-4", face_of({dot}), 0},
        {"enlarged is 1-4", face_of({dot}), 5},
        {"u8 glyphs", face_of(std::vector<Bitmap>(256, dot)), 1},
        {"u8 advance", face_of({Bitmap{256, 1, std::vector<std::uint8_t>(256)}}), 1},
        {"u8 height", face_of({Bitmap{1, 256, std::vector<std::uint8_t>(256)}}), 1},
        {"u16 places", face_of(noise), 1},
        {"height is that of every cell", uneven, 1},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_THAT(pack(row.face, Packing::plain, row.enlarged).bytes, IsEmpty());
        EXPECT_THAT(pack(row.face, Packing::runs, row.enlarged).bytes, IsEmpty());
        EXPECT_THAT(pack_smallest(row.face, row.enlarged).bytes, IsEmpty());
    }
}

TEST(SmallestFace, IsPlainWhereRunsSaveNothing) {
    // Header and place are 8 bytes in both. A dot: plain 5 + 1, runs 1 + 1. A chequerboard of 8 x 8:
    // plain 5 + 8; runs 1 + at least (7 + 64 x 2) / 8 = 17.
    const Bitmap dot = drawing({"#"});
    EXPECT_EQ(pack_smallest(face_of({dot}), 1).packing, Packing::runs);
    EXPECT_EQ(pack_smallest(face_of({dot}), 1).bytes.size(), 10U);
    Bitmap chequers{8, 8, {}};
    for (int i = 0; i < 64; ++i)
        chequers.pixels.push_back(static_cast<std::uint8_t>((i % 8 + i / 8) % 2));
    EXPECT_EQ(pack_smallest(face_of({chequers}), 1).packing, Packing::plain);
    EXPECT_EQ(pack_smallest(face_of({chequers}), 1).bytes.size(), 21U);
}

TEST(CroppedBytes, AreTheInkedBoxInWholeBytesAndSevenOfMetrics) {
    // 3 x 3 bits = 2 bytes, a blank 0: 2 + 7 + 0 + 7.
    EXPECT_EQ(cropped_bytes(face_of({small_tree, drawing({"..", "..", ".."})})), 16U);
}

TEST(PlainPicture, IsAHeaderThenPlacesThenAllBits) {
    EXPECT_THAT(pack_picture(small_tree, Packing::plain),
                ElementsAre(3,
                            0,
                            3,
                            0,
                            0x00,
                            0x00,
                            3,
                            1,  // w, h, plain, -, rows of a strip, strips
                            10,
                            0,  // the strip starts at 8 + 2
                            0x4B,
                            0x80));
}

TEST(RunsPicture, IsCodedLikeAGlyph) {
    EXPECT_THAT(pack_picture(small_tree, Packing::runs),
                ElementsAre(3, 0, 3, 0, 0x01, 0x00, 3, 1, 10, 0, 0xAA, 0x70));
}

TEST(RunsPicture, StartsEveryStripAfresh) {
    // 512 columns of ground make strips of two rows, 1,024 pixels. Three rows: two strips. A run of 512
    // takes 22 bits with k = 5, 15 with 6, 12 with 7: in bytes 6 is as good as 7. Eight ones, a zero,
    // six zeros; in the first strip then a 1 for the repeated row.
    EXPECT_THAT(pack_picture(Bitmap{512, 3, std::vector<std::uint8_t>(3 * 512)}, Packing::runs),
                ElementsAre(0, 2, 3, 0, 0x01, 0x06, 2, 2, 12, 0, 14, 0, 0xFF, 0x01, 0xFF, 0x00));
}

TEST(Pictures, ThatDoNotFitTheFormatGiveNoBytes) {
    const auto ground = [](int width, int height) {
        return Bitmap{width,
                      height,
                      std::vector<std::uint8_t>(static_cast<std::size_t>(width) *
                                                static_cast<std::size_t>(height))};
    };
    for (const Packing packing : {Packing::plain, Packing::runs}) {
        EXPECT_THAT(pack_picture(ground(0, 0), packing), IsEmpty());
        EXPECT_THAT(pack_picture(ground(1024, 1), packing), IsEmpty());
        EXPECT_THAT(pack_picture(ground(1, 1024), packing), IsEmpty());
    }
    EXPECT_THAT(pack_picture(ground(1023, 1023), Packing::plain), IsEmpty()) << "130,817 bytes";
    EXPECT_THAT(pack_picture(ground(1023, 1023), Packing::runs), testing::Not(IsEmpty()));
}

}  // namespace
}  // namespace dialplate

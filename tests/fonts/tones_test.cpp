// Bitmaps of two bits a pixel: coded on paper, round trips over the fonts of three Debian packages by the PC's reader
// and the engine's, and what damage may do.
#include "ui/tones.hpp"

#include "fonts/code_context.hpp"
#include "fonts/code_plain.hpp"
#include "fonts/face.hpp"
#include "tests/fonts/debian_fonts.hpp"
#include "tests/fonts/drawings.hpp"
#include "tests/fonts/image_in_memory.hpp"
#include "ui/face_metrics.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace dialplate {
namespace {

Bitmap tones(int width, int height, std::vector<std::uint8_t> pixels) {
    return {width, height, std::move(pixels), true};
}

// What the engine sends, by tone.
struct Glass {
    std::vector<std::uint8_t> seen;
    void push(std::uint16_t colour, std::uint16_t count) {
        seen.insert(seen.end(), count, static_cast<std::uint8_t>(colour));
    }
};
constexpr Shades tone_numbers{{0, 1, 3, 2}};

TEST(Tones, AreTwoBitsOfWhichTheFirstIsNearerToInkAndTheSecondBetween) {
    fonts::BitWriter bits;
    fonts::write_plain(bits, tones(4, 1, {0, 1, 2, 3}));
    EXPECT_EQ(bits.bytes(), (std::vector<std::uint8_t>{0b00'01'11'10}));
    fonts::BitReader reader(bits.bytes());
    EXPECT_EQ(fonts::read_plain(reader, 4, 1, true), tones(4, 1, {0, 1, 2, 3}));
}

// One pixel, every chance one half. "The row differs" is ground: of 255 remain 127, doubled to 254, low 0 in 9 bits.
// Ink in the first bit: low 127, range 127, doubled: 254 and 254 in 10 bits; ground: low 0, range 254 in 10 bits. The
// second bit the same again, with 11 bits, of which a byte is the first eight:
//   tone 1, ground ink:    [254, 508),  32 is 256 to 263     tone 2, ink ink:     [762, 1016), 96 is 768 to 775
//   tone 3, ink ground:    [508, 762),  64 is 512 to 519
TEST(Tones, AreCodedAsWorkedOutOnPaper) {
    const std::vector<std::uint8_t> expected[] = {{}, {32}, {96}, {64}};
    for (std::uint8_t tone = 1; tone < 4; ++tone) {
        const Bitmap pixel = tones(1, 1, {tone});
        EXPECT_EQ(fonts::write_contexts({&pixel}, even_chances()).front(), expected[tone]);
    }
}

// Two rows of two pixels: near ground and ground, then ink and ground. Contexts are of image.md, "Contexts" and
// "Tones"; at the left edge bits 3, 2 and 0 are set, in the last column bit 1 is not.
TEST(Tones, TrainTheirTableByCounting) {
    const Bitmap bitmap = tones(2, 2, {1, 0, 3, 0});
    const ContextTable table = train_contexts({&bitmap});
    // Both rows differ, the second below a row without ink.
    EXPECT_EQ(table[128], 254);
    // First bits of the first column: ground, below ground with ink above it; ink, below two of ground.
    EXPECT_EQ(table[0b0001111], 254);
    EXPECT_EQ(table[0b0001101], 2);
    // Second bits know the first ones of their row and of the one above: ground and ground; ink and ground.
    EXPECT_EQ(table[135 + 0b0001101], 2);
    EXPECT_EQ(table[135 + 0b0011101], 254);
    EXPECT_EQ(table[135], 128) << "never met";
}

// The engine finds the table behind the header of the image.
std::vector<std::uint8_t> image_with(const ContextTable& table, const PackedFace& packed) {
    std::vector<std::uint8_t> bytes(header::bytes);
    bytes.insert(bytes.end(), table.begin(), table.end());
    bytes.insert(bytes.end(), packed.bytes.begin(), packed.bytes.end());
    return bytes;
}

TEST(Tones, OfTheFontsAtEverySizeComeBackFromBothPackingsByBothReaders) {
    constexpr std::uint16_t face_at = header::bytes + context_model::all;
    std::size_t font = 0;
    for (const std::string& file : debian_fonts()) {
        // Each font at a third of the sizes; together all of them, 8 to 96 px.
        for (int size = 8 + static_cast<int>(font++ % 3); size <= 96; size += size < 24 ? 3 : 12) {
            SCOPED_TRACE(file + ", " + std::to_string(size) + " px");
            const FaceResult result =
                rasterise({.file = file,
                           .size = size,
                           .characters = size < 40 ? ascii() : U"0123456789. -%g",
                           .smooth = true});
            ASSERT_TRUE(result.face.has_value()) << result.error;
            const std::vector<Glyph>& glyphs = result.face->glyphs;
            const ContextTable table = train_contexts(cells_of(*result.face));
            for (const Packing packing : {Packing::plain, Packing::context}) {
                const bool context = packing == Packing::context;
                const PackedFace packed =
                    context ? pack_context(*result.face, table, 1) : pack(*result.face, packing, 1);
                ASSERT_FALSE(packed.bytes.empty());
                const std::vector<Bitmap> seen =
                    context ? unpack_context(packed, table) : unpack(packed);
                ASSERT_EQ(seen.size(), glyphs.size());
                const std::vector<std::uint8_t> bytes = image_with(table, packed);
                const Image image = image_of(bytes);
                const FaceMetrics<Image> metrics{image, face_at};
                for (std::size_t i = 0; i < seen.size(); ++i) {
                    const Bitmap& cell = glyphs[i].cell;
                    ASSERT_EQ(seen[i], cell) << text_of(seen[i]);
                    Glass glass;
                    const ShadeSender<Glass> out(glass, tone_numbers);
                    const auto number = static_cast<std::uint8_t>(i);
                    const GlyphMetrics glyph =
                        context ? metrics.of_context(number) : metrics.of_others(number);
                    const Extent extent{glyph.advance, packed.bytes[face::height], 1};
                    const auto u8 = [&](unsigned at) { return image.u8(word(glyph.at + at)); };
                    if (context)
                        send_context_tones<ContextCore, 253>(image, glyph.at, extent, out);
                    else
                        send_plain_tones(
                            image, word(glyph.at + 4U), extent, {u8(0), u8(1), u8(2), u8(3)}, out);
                    ASSERT_EQ(glass.seen, cell.pixels) << text_of(cell);
                }
            }
        }
    }
}

TEST(Tones, OfAFaceCannotBeEnlargedNorPackedInRuns) {
    const FaceResult result = rasterise({.file = dejavu + "DejaVuSans.ttf",
                                         .size = 20,
                                         .characters = U"0123456789",
                                         .smooth = true});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    EXPECT_TRUE(pack(*result.face, Packing::plain, 2).bytes.empty());
    EXPECT_TRUE(pack_context(*result.face, even_chances(), 2).bytes.empty());
    EXPECT_TRUE(pack(*result.face, Packing::runs, 1).bytes.empty());
}

TEST(Tones, NeedOutlines) {
    const FaceResult result = rasterise({.file = DIALPLATE_TREE "/fonts/legend9.bdf",
                                         .size = 9,
                                         .characters = U"0",
                                         .smooth = true});
    EXPECT_FALSE(result.face.has_value());
    EXPECT_NE(result.error.find("smoothing needs outlines"), std::string::npos) << result.error;
}

// Half of what 48 px digits in one bit take uncompressed: medians over 22 faces, their own table not counted,
// of bits cropped to the ink in one bit with 7 bytes of metrics. These bounds hold what was measured.
TEST(Tones, TakeAShareOfCroppedOneBitFacesThatIsKnown) {
    struct Row {
        int size;
        double median;
    };
    const std::u32string readout = U"0123456789. -";
    for (const Row& row : {Row{32, 0.69}, Row{48, 0.50}, Row{72, 0.35}}) {
        std::vector<double> shares;
        for (const std::string& file : debian_fonts()) {
            FaceRequest request{.file = file, .size = row.size, .characters = readout};
            const FaceResult plain = rasterise(request);
            request.smooth = true;
            const FaceResult smooth = rasterise(request);
            ASSERT_TRUE(plain.face && smooth.face) << file;
            const ContextTable table = train_contexts(cells_of(*smooth.face));
            shares.push_back(
                static_cast<double>(pack_context(*smooth.face, table, 1).bytes.size()) /
                static_cast<double>(cropped_bytes(*plain.face)));
        }
        std::sort(shares.begin(), shares.end());
        EXPECT_LE(shares[shares.size() / 2], row.median) << row.size << " px";
    }
}

TEST(Tones, AreDecodedFromAnythingToAWholeCell) {
    std::mt19937 random(53);
    for (int round = 0; round < 300; ++round) {
        std::vector<std::uint8_t> bytes(header::bytes + context_model::all + random() % 40);
        for (std::uint8_t& byte : bytes)
            byte = static_cast<std::uint8_t>(random());
        const Image image = image_of(bytes);
        constexpr std::uint16_t at = header::bytes + context_model::all;
        const Extent extent{static_cast<std::uint16_t>(1 + random() % 60),
                            static_cast<std::uint16_t>(1 + random() % 90),
                            1};
        Glass in_context, plain;
        send_context_tones<ContextCore, 60>(
            image, at, extent, ShadeSender<Glass>(in_context, tone_numbers));
        send_plain_tones(image,
                         at,
                         extent,
                         Rect{0, 0, extent.width, extent.height},
                         ShadeSender<Glass>(plain, tone_numbers));
        const std::size_t pixels = std::size_t{extent.width} * extent.height;
        EXPECT_EQ(in_context.seen.size(), pixels);
        EXPECT_EQ(plain.seen.size(), pixels);
    }
}

TEST(Tones, CutShortOrDamagedAreReadInsideTheirBytes) {
    const FaceResult result = rasterise({.file = b612 + "B612-Bold.otf",
                                         .size = 20,
                                         .characters = U"0123456789. -",
                                         .smooth = true});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    const ContextTable table = train_contexts(cells_of(*result.face));
    for (const Packing packing : {Packing::plain, Packing::context}) {
        const bool context = packing == Packing::context;
        const PackedFace packed =
            context ? pack_context(*result.face, table, 1) : pack(*result.face, packing, 1);
        const auto read = [&](const PackedFace& face) {
            return context ? unpack_context(face, table) : unpack(face);
        };
        for (std::size_t bytes = 0; bytes < packed.bytes.size(); ++bytes) {
            // An exact copy on the heap, so that a read behind the last byte is seen.
            const PackedFace part{
                packing,
                {packed.bytes.begin(), packed.bytes.begin() + static_cast<std::ptrdiff_t>(bytes)}};
            EXPECT_TRUE(read(part).empty()) << "cut after " << bytes;
        }
        PackedFace damaged = packed;
        for (std::size_t bit = 0; bit < 8 * packed.bytes.size(); bit += 3) {
            damaged.bytes[bit / 8] ^= static_cast<std::uint8_t>(0x80 >> (bit % 8));
            for (const Bitmap& cell : read(damaged)) {
                ASSERT_EQ(
                    cell.pixels.size(),
                    static_cast<std::size_t>(cell.width) * static_cast<std::size_t>(cell.height));
            }
            damaged.bytes[bit / 8] = packed.bytes[bit / 8];
        }
        EXPECT_EQ(read(packed).size(), 13U);
    }
}

TEST(Tones, OfAPictureComeBackStripByStrip) {
    std::mt19937 random(54);
    for (const int width : {1, 40, 253}) {
        Bitmap picture = random_blobs(random, width, 90);
        const Bitmap grey = random_blobs(random, width, 90);
        picture.tones = true;
        for (std::size_t i = 0; i < picture.pixels.size(); ++i)
            picture.pixels[i] = static_cast<std::uint8_t>(2 * picture.pixels[i] + grey.pixels[i]);
        std::vector<const Bitmap*> strips;
        const std::vector<Bitmap> all = strips_of(picture);
        for (const Bitmap& strip : all)
            strips.push_back(&strip);
        const ContextTable table = train_contexts(strips);
        for (const Packing packing : {Packing::plain, Packing::context})
            EXPECT_EQ(unpack_picture(pack_picture(picture, packing, table), table), picture);
        EXPECT_TRUE(pack_picture(picture, Packing::runs).empty());
    }
    const Bitmap too_wide = random_blobs(random, 254, 3);
    EXPECT_TRUE(pack_picture(too_wide, Packing::context, even_chances()).empty());
}

// Source: arithmetic; a third and two thirds of the way between each two values of five and of six bits. Each of the
// halvings rounds down, so they lie low: by less than two steps.
TEST(Shades, LieAThirdAndTwoThirdsOfTheWay) {
    for (const unsigned shift : {0U, 5U, 11U}) {
        const unsigned values = shift == 5 ? 64 : 32;
        for (unsigned ground = 0; ground < values; ++ground) {
            for (unsigned ink = 0; ink < values; ++ink) {
                // The other parts full in one of them: nothing may leak from part to part.
                const unsigned others = shift == 5 ? 0xF81F : shift == 0 ? 0xFFE0 : 0x07FF;
                const Colours colours{word(ink << shift | others), word(ground << shift)};
                const Shades shades = shades_between(colours);
                EXPECT_EQ(shades.of[0], colours.ground);
                EXPECT_EQ(shades.of[2], colours.ink);
                const auto part = [&](unsigned of) {
                    return static_cast<double>(shades.of[of] >> shift & (values - 1));
                };
                EXPECT_NEAR(part(1), (2.0 * ground + ink) / 3.0 - 0.5, 0.9);
                EXPECT_NEAR(part(3), (ground + 2.0 * ink) / 3.0 - 0.5, 0.9);
            }
        }
    }
}

}  // namespace
}  // namespace dialplate

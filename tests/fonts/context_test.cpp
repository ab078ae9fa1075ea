// The packing `context`: streams worked out on paper, round trips over the fonts of three Debian packages, and
// what damage may do.
#include "ui/context.hpp"

#include "fonts/code_context.hpp"
#include "fonts/face.hpp"
#include "tests/fonts/debian_fonts.hpp"
#include "tests/fonts/drawings.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace dialplate {
namespace {

using Streams = std::vector<std::vector<std::uint8_t>>;

// One pixel of ground. The only decision: its row is the same as the ground above, which is ink (image.md).
// Range 255, chance 128: split 255 x 128 / 256 = 127; low becomes 127, range 128, no bit comes in. The shortest
// bytes in [127, 255) of 8 bits: 127.
TEST(Context, CodesAPixelOfGroundAsWorkedOutOnPaper) {
    const Bitmap ground{1, 1, {0}};
    EXPECT_EQ(fonts::write_contexts({&ground}, even_chances()), (Streams{{127}}));
}

// One pixel of ink. The row differs, which is ground: range 127, doubled to 254, 9 bits, low 0. The pixel is
// ink: split 254 x 128 / 256 = 127; low 127, range 127, doubled: low 254, range 254, 10 bits. A byte of 64 is
// 256 to 259 in 10 bits, whatever follows, within [254, 508); 63 may be 252.
TEST(Context, CodesAPixelOfInkAsWorkedOutOnPaper) {
    const Bitmap ink{1, 1, {1}};
    EXPECT_EQ(fonts::write_contexts({&ink}, even_chances()), (Streams{{64}}));
}

// With ink behind it, the pixel of ground may borrow: a number in [127, 255) has to begin its stream, and 64,
// the first byte of the next, is none, so nothing is gained; with ground behind it, whose 127 is one, its own
// stream is empty.
TEST(Context, LetsAStreamBorrowFromTheNext) {
    const Bitmap ground{1, 1, {0}}, ink{1, 1, {1}};
    EXPECT_EQ(fonts::write_contexts({&ground, &ink}, even_chances()), (Streams{{127}, {64}}));
    EXPECT_EQ(fonts::write_contexts({&ground, &ground}, even_chances()), (Streams{{}, {127}}));
}

// The same three pixels one after the other, ground, ink, ground, take three bytes; with the two of ground next to
// each other, the first of them borrows all it needs.
TEST(Context, PutsGlyphsWhereTheirStreamsCanBorrow) {
    const Bitmap ground{1, 1, {0}}, ink{1, 1, {1}};
    const std::vector<const Bitmap*> cells = {&ground, &ink, &ground};
    const auto bytes_of = [](const Streams& streams) {
        std::size_t bytes = 0;
        for (const std::vector<std::uint8_t>& stream : streams)
            bytes += stream.size();
        return bytes;
    };
    EXPECT_EQ(bytes_of(fonts::write_contexts(cells, even_chances())), 3U);
    std::vector<const Bitmap*> ordered;
    for (const std::size_t i : fonts::short_order(cells, 0, even_chances()))
        ordered.push_back(cells[i]);
    EXPECT_EQ(bytes_of(fonts::write_contexts(ordered, even_chances())), 2U);
    EXPECT_EQ(fonts::short_order(cells, 3, even_chances()), (std::vector<std::size_t>{0, 1, 2}));
}

TEST(Context, KeepsEveryGlyphAndCountsDigitsFromTheFirstWhenItOrders) {
    const FaceResult result =
        rasterise({.file = dejavu + "DejaVuSans.ttf", .size = 16, .characters = ascii()});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    const ContextTable table = train_contexts(cells_of(*result.face));
    RasterFace ordered = *result.face;
    order_for_contexts(ordered, true, table);
    ASSERT_EQ(ordered.glyphs.size(), 95U);
    for (char32_t digit = 0; digit < 10; ++digit)
        EXPECT_EQ(ordered.glyphs[digit].code, U'0' + digit);
    const PackedFace packed = pack_context(ordered, table, 1);
    // Half a byte for most of the 85 glyphs that may move.
    EXPECT_LT(packed.bytes.size() + 20, pack_context(*result.face, table, 1).bytes.size());
    const std::vector<Bitmap> seen = unpack_context(packed, table);
    ASSERT_EQ(seen.size(), 95U);
    std::set<char32_t> codes;
    for (std::size_t i = 0; i < seen.size(); ++i) {
        EXPECT_EQ(seen[i], ordered.glyphs[i].cell) << text_of(seen[i]);
        codes.insert(ordered.glyphs[i].code);
    }
    EXPECT_EQ(codes.size(), 95U);
}

// Five pixels in two rows: chances are the share of ground among what a context met, rounded to 1/256.
TEST(Context, TrainsItsTableByCounting) {
    // Rows: ink ground; the same; ground ground.
    const Bitmap bitmap{2, 3, {1, 0, 1, 0, 0, 0}};
    const ContextTable table = train_contexts({&bitmap});
    // The decision before the first row met "differs" alone; before the second "the same" alone, below a row with
    // ink; before the third "differs", after one repeat.
    EXPECT_EQ(table[128], 254);
    EXPECT_EQ(table[132], 2);
    EXPECT_EQ(table[133], 254);
    // First row: above ground, above that ink; left of both ink. Column 0, context 0b0001111: ink. Column 1, the last,
    // 0b1000101: ground.
    EXPECT_EQ(table[0b0001111], 2);
    EXPECT_EQ(table[0b1000101], 254);
    // Third row: both rows above are ink ground. Column 0: 0b0011111, ground. Column 1: 0b0001101, ground.
    EXPECT_EQ(table[0b0011111], 254);
    EXPECT_EQ(table[0b0001101], 254);
    EXPECT_EQ(table[0], 128) << "never met";
}

TEST(Context, GivesBackEveryGlyphOfTheFontsAtEverySize) {
    std::size_t font = 0;
    for (const std::string& file : debian_fonts()) {
        // Each font at a third of the sizes; together all of them, 8 to 96 px.
        for (int size = 8 + static_cast<int>(font++ % 3); size <= 96; size += size < 24 ? 3 : 12) {
            SCOPED_TRACE(file + ", " + std::to_string(size) + " px");
            const FaceResult result =
                rasterise({.file = file,
                           .size = size,
                           .characters = size < 40 ? ascii() : U"0123456789. -@%WMg"});
            ASSERT_TRUE(result.face.has_value()) << result.error;
            const ContextTable table = train_contexts(cells_of(*result.face));
            const PackedFace packed = pack_context(*result.face, table, 1);
            ASSERT_FALSE(packed.bytes.empty());
            const std::vector<Bitmap> seen = unpack_context(packed, table);
            ASSERT_EQ(seen.size(), result.face->glyphs.size());
            for (std::size_t i = 0; i < seen.size(); ++i)
                ASSERT_EQ(seen[i], result.face->glyphs[i].cell) << text_of(seen[i]);
        }
    }
}

// Medians over 22 faces, with a table of each face's own that is not counted. The aims are 0.25, 0.20 and 0.175 for
// readouts of 48, 64 and 72 px and 0.50 for legends; the bounds of legends hold what was measured.
TEST(Context, TakesAShareOfCroppedFacesThatIsKnown) {
    struct Row {
        std::u32string characters;
        int size;
        double median;
    };
    const std::u32string readout = U"0123456789. -";
    const Row rows[] = {{readout, 48, 0.250},
                        {readout, 64, 0.200},
                        {readout, 72, 0.175},
                        {ascii(), 8, 0.42},
                        {ascii(), 12, 0.465}};
    for (const Row& row : rows) {
        std::vector<double> shares;
        for (const std::string& file : debian_fonts()) {
            const FaceResult result =
                rasterise({.file = file, .size = row.size, .characters = row.characters});
            ASSERT_TRUE(result.face.has_value()) << file << ": " << result.error;
            const ContextTable table = train_contexts(cells_of(*result.face));
            RasterFace ordered = *result.face;
            order_for_contexts(ordered, false, table);
            const PackedFace packed = pack_context(ordered, table, 1);
            shares.push_back(static_cast<double>(packed.bytes.size()) /
                             static_cast<double>(cropped_bytes(*result.face)));
        }
        std::sort(shares.begin(), shares.end());
        EXPECT_LE(shares[shares.size() / 2], row.median) << row.size << " px";
    }
}

/// Counts what is sent.
struct PixelCount {
    std::size_t seen = 0;
    static Colours colours() { return {1, 0}; }
    void run(bool, std::uint16_t length) { seen += length; }
};

TEST(Context, DecodesAnythingToAWholeCell) {
    std::mt19937 random(52);
    for (int round = 0; round < 300; ++round) {
        std::vector<std::uint8_t> bytes(header::bytes + context_model::contexts + random() % 40);
        for (std::uint8_t& byte : bytes)
            byte = static_cast<std::uint8_t>(random());
        const Rom<MemoryBytes> image(
            MemoryBytes(bytes.data(), static_cast<std::uint16_t>(bytes.size())));
        const auto width = static_cast<std::uint8_t>(1 + random() % 60);
        const auto height = static_cast<std::uint8_t>(1 + random() % 90);
        PixelCount pixels;
        ContextBlock<Rom<MemoryBytes>, ContextCore, 60>(
            image, header::bytes + context_model::contexts, width, height)
            .send(1, pixels);
        EXPECT_EQ(pixels.seen, std::size_t{width} * height);
    }
}

TEST(Context, CutShortIsReadInsideItsBytes) {
    const FaceResult result =
        rasterise({.file = b612 + "B612-Bold.otf", .size = 24, .characters = U"0123456789. -"});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    const ContextTable table = train_contexts(cells_of(*result.face));
    const PackedFace packed = pack_context(*result.face, table, 1);
    for (std::size_t bytes = 0; bytes < packed.bytes.size(); ++bytes) {
        const PackedFace part{
            Packing::context,
            {packed.bytes.begin(), packed.bytes.begin() + static_cast<std::ptrdiff_t>(bytes)}};
        EXPECT_TRUE(unpack_context(part, table).empty()) << "cut after " << bytes;
    }
    EXPECT_EQ(unpack_context(packed, table).size(), 13U);
}

}  // namespace
}  // namespace dialplate

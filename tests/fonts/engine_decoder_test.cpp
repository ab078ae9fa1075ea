// What this room packs, the engine's decoders read: run by run into the same pixels.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"
#include "tests/fonts/image_in_memory.hpp"
#include "ui/context.hpp"
#include "ui/face_metrics.hpp"
#include "ui/glyph.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

struct Pixels {
    std::vector<std::uint8_t> seen;
    [[nodiscard]] static Colours colours() { return {1, 0}; }
    void run(bool ink, std::uint16_t length) { seen.insert(seen.end(), length, ink ? 1 : 0); }
    void send(const Row& row) {
        for (unsigned i = 0; i < row.used; ++i) {
            seen.insert(seen.end(), row.runs[i], static_cast<std::uint8_t>(i % 2));
        }
    }
};

TEST(Engine, DecodesEveryGlyphOfBothPackings) {
    const FaceResult result = rasterise(
        {.file = liberation + "LiberationSerif-BoldItalic.ttf", .size = 31, .characters = ascii()});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    for (const Packing packing : {Packing::plain, Packing::runs}) {
        const std::vector<std::uint8_t> bytes = pack(*result.face, packing, 1).bytes;
        const Image image = image_of(bytes);
        for (std::size_t i = 0; i < result.face->glyphs.size(); ++i) {
            const Bitmap& cell = result.face->glyphs[i].cell;
            const std::uint16_t at = image.u16(static_cast<std::uint16_t>(face::places + 2 * i));
            ASSERT_EQ(bytes[at], cell.width);
            Pixels pixels;
            const auto block = [&](std::uint16_t metrics) {
                return BitBlock<Image>{Bits<Image>(image, word(at + unsigned{metrics})),
                                       {bytes[at], bytes[face::height], 1}};
            };
            if (packing == Packing::runs)
                block(1).runs(bytes[face::parameters], pixels);
            else
                block(5).plain(Rect{bytes[at + 1U], bytes[at + 2U], bytes[at + 3U], bytes[at + 4U]},
                               pixels);
            ASSERT_EQ(pixels.seen, cell.pixels) << text_of(cell);
        }
    }
}

TEST(Engine, DecodesEveryGlyphInContext) {
    const FaceResult result = rasterise(
        {.file = liberation + "LiberationSerif-BoldItalic.ttf", .size = 31, .characters = ascii()});
    ASSERT_TRUE(result.face.has_value()) << result.error;
    std::vector<const Bitmap*> cells;
    for (const Glyph& glyph : result.face->glyphs)
        cells.push_back(&glyph.cell);
    const ContextTable table = train_contexts(cells);
    const PackedFace packed = pack_context(*result.face, table, 1);
    ASSERT_FALSE(packed.bytes.empty());
    // The engine finds the table behind the header of the image.
    std::vector<std::uint8_t> bytes(header::bytes);
    bytes.insert(bytes.end(), table.begin(), table.end());
    const auto face_at = static_cast<std::uint16_t>(bytes.size());
    bytes.insert(bytes.end(), packed.bytes.begin(), packed.bytes.end());
    const Image image = image_of(bytes);
    std::vector<Bitmap> seen;
    for (std::size_t i = 0; i < cells.size(); ++i) {
        Pixels pixels;
        const FaceMetrics<Image> metrics{image, face_at};
        const GlyphMetrics glyph = metrics.of_context(static_cast<std::uint8_t>(i));
        ASSERT_EQ(glyph.advance, cells[i]->width);
        ContextBlock<Image, ContextCore, 64>(
            image, glyph.at, glyph.advance, packed.bytes[face::height])
            .send(1, pixels);
        ASSERT_EQ(pixels.seen, cells[i]->pixels) << text_of(*cells[i]);
    }
    EXPECT_EQ(unpack_context(packed, table), unpack(pack(*result.face, Packing::plain, 1)));
}

TEST(Engine, DecodesEveryStripOfAPicture) {
    struct Case {
        Packing packing;
        int width;
    };
    // In `plain` a row may have more strokes than the engine keeps at a time.
    for (const auto [packing, width] : {Case{Packing::runs, 26}, Case{Packing::plain, 301}}) {
        std::mt19937 random(40);
        const Bitmap bitmap = random_blobs(random, width, 161);
        const std::vector<std::uint8_t> bytes = pack_picture(bitmap, packing);
        ASSERT_FALSE(bytes.empty());
        const Image image = image_of(bytes);
        Pixels pixels;
        int left = bitmap.height;
        for (unsigned strip = 0; left > 0; ++strip, left -= bytes[picture::strip_rows]) {
            const Extent extent{static_cast<std::uint16_t>(width),
                                std::min<std::uint16_t>(bytes[picture::strip_rows],
                                                        static_cast<std::uint16_t>(left)),
                                1};
            BitBlock<Image> block{Bits<Image>(image, image.u16(word(picture::places + 2 * strip))),
                                  extent};
            if (packing == Packing::runs)
                block.runs(bytes[picture::parameters], pixels);
            else
                block.plain(Rect{0, 0, extent.width, extent.height}, pixels);
        }
        EXPECT_EQ(pixels.seen, bitmap.pixels);
    }
}

}  // namespace
}  // namespace dialplate

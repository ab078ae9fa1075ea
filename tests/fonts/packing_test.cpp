// Packing against a slow twin, and there and back again.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"
#include "tests/fonts/slow_coder.hpp"

#include <gtest/gtest.h>

#include <set>

namespace dialplate {
namespace {

std::vector<Bitmap> bitmaps_of(const RasterFace& face) {
    std::vector<Bitmap> cells;
    for (const Glyph& glyph : face.glyphs)
        cells.push_back(glyph.cell);
    return cells;
}

int strokes(const Bitmap& bitmap) {
    int most = 0;
    for (int y = 0; y < bitmap.height; ++y) {
        int changes = 0;
        bool ink = false;
        for (int x = 0; x <= bitmap.width; ++x) {
            const bool next = x < bitmap.width && bitmap.ink(x, y);
            changes += next != ink ? 1 : 0;
            ink = next;
        }
        most = std::max(most, changes / 2);
    }
    return most;
}

RasterFace random_face(std::mt19937& random) {
    const auto below = [&](unsigned limit) { return static_cast<int>(random() % limit); };
    const int height = 1 + below(below(4) == 0 ? 200 : 24);
    const int widest = 1 + below(below(4) == 0 ? 255 : 24);
    std::vector<Bitmap> cells;
    for (int glyphs = 1 + below(20); glyphs > 0; --glyphs)
        cells.push_back(random_blobs(random, 1 + below(static_cast<unsigned>(widest)), height));
    return face_of(cells);
}

TEST(RunsFace, MatchesASlowTwinAndNoOtherParametersAreSmaller) {
    std::mt19937 random(20);
    for (int round = 0; round < 60; ++round) {
        SCOPED_TRACE(round);
        const RasterFace face = random_face(random);
        const std::vector<std::uint8_t> bytes = pack(face, Packing::runs, 1).bytes;
        if (bytes.empty()) continue;  // larger than the format allows: see format_test.cpp

        const auto slow_bytes = [&](int white, int black) {
            std::set<std::vector<std::uint8_t>> different;
            std::size_t sum = 6 + 2 * face.glyphs.size();
            for (const Glyph& glyph : face.glyphs) {
                std::vector<std::uint8_t> glyph_bytes =
                    bytes_of(slow_runs(glyph.cell, white, black));
                glyph_bytes.insert(glyph_bytes.begin(),
                                   static_cast<std::uint8_t>(glyph.cell.width));
                if (different.insert(glyph_bytes).second) sum += glyph_bytes.size();
            }
            return sum;
        };
        std::size_t smallest = slow_bytes(0, 0);
        for (int white = 0; white <= 7; ++white)
            for (int black = 0; black <= 7; ++black)
                smallest = std::min(smallest, slow_bytes(white, black));
        EXPECT_EQ(bytes.size(), smallest);

        const int white = bytes[5] & 15, black = bytes[5] >> 4;
        for (std::size_t i = 0; i < face.glyphs.size(); ++i) {
            const std::size_t place = bytes[6 + 2 * i] | static_cast<std::size_t>(bytes[7 + 2 * i])
                                                             << 8;
            const auto expected = bytes_of(slow_runs(face.glyphs[i].cell, white, black));
            ASSERT_LE(place + 1 + expected.size(), bytes.size());
            EXPECT_EQ(bytes[place], face.glyphs[i].cell.width);
            EXPECT_TRUE(std::equal(expected.begin(),
                                   expected.end(),
                                   bytes.begin() + static_cast<std::ptrdiff_t>(place) + 1));
        }
    }
}

TEST(Faces, ComeBackFromBothPackingsAsTheyWere) {
    std::mt19937 random(21);
    int packed_faces = 0;
    for (int round = 0; round < 300; ++round) {
        SCOPED_TRACE(round);
        const RasterFace face = random_face(random);
        for (const Packing packing : {Packing::plain, Packing::runs}) {
            const PackedFace packed = pack(face, packing, 1);
            if (packed.bytes.empty()) continue;
            ++packed_faces;
            ASSERT_EQ(unpack(packed), bitmaps_of(face));
            ASSERT_EQ(pack(face, packing, 1).bytes, packed.bytes) << "the same face, other bytes";
        }
    }
    EXPECT_GT(packed_faces, 400);
}

TEST(SmallestFace, IsTheSmallerOfTheTwo) {
    std::mt19937 random(22);
    for (int round = 0; round < 100; ++round) {
        const RasterFace face = random_face(random);
        const auto plain = pack(face, Packing::plain, 1), runs = pack(face, Packing::runs, 1);
        if (plain.bytes.empty() || runs.bytes.empty()) continue;
        EXPECT_EQ(pack_smallest(face, 1).bytes.size(),
                  std::min(plain.bytes.size(), runs.bytes.size()));
    }
}

TEST(SmallestFace, IsTheOnlyOneThatFits) {
    // 160 cells of 64 x 64 dots: as bits 512 bytes each, 82 KiB; as runs of 64 rows that repeat some 12.
    // The dot moves, so that no two cells are the same.
    std::vector<Bitmap> cells;
    for (int i = 0; i < 160; ++i) {
        Bitmap cell{64, 64, std::vector<std::uint8_t>(64 * 64, 1)};
        cell.pixels[static_cast<std::size_t>(64 + i)] = 0;
        cells.push_back(std::move(cell));
    }
    const RasterFace face = face_of(cells);
    ASSERT_TRUE(pack(face, Packing::plain, 1).bytes.empty());
    EXPECT_EQ(pack_smallest(face, 1).packing, Packing::runs);
    EXPECT_EQ(unpack(pack_smallest(face, 1)), cells);
}

TEST(Pictures, ComeBackFromBothPackingsAsTheyWere) {
    std::mt19937 random(23);
    const auto below = [&](unsigned limit) { return static_cast<int>(random() % limit); };
    for (int round = 0; round < 100; ++round) {
        SCOPED_TRACE(round);
        const Bitmap picture =
            random_blobs(random, 1 + below(round % 2 == 0 ? 480 : 24), 1 + below(320));
        for (const Packing packing : {Packing::plain, Packing::runs}) {
            const std::vector<std::uint8_t> packed = pack_picture(picture, packing);
            ASSERT_EQ(packed.empty(), packing == Packing::runs && strokes(picture) > 12);
            if (packed.empty()) continue;
            const auto unpacked = unpack_picture(packed);
            ASSERT_TRUE(unpacked.has_value());
            ASSERT_EQ(*unpacked, picture);
        }
    }
}

TEST(Pictures, AreCutIntoStripsOfAtMostAThousandAndTwentyFourPixelsOrOneRow) {
    for (const int width : {1, 3, 31, 32, 33, 320, 480, 1023}) {
        for (const int height : {1, 17, 254, 255, 256, 320, 1023}) {
            SCOPED_TRACE(std::to_string(width) + " x " + std::to_string(height));
            const auto bytes = pack_picture(
                Bitmap{width,
                       height,
                       std::vector<std::uint8_t>(static_cast<std::size_t>(width * height))},
                Packing::runs);
            ASSERT_GT(bytes.size(), 8U);
            const int rows = bytes[6], strips = bytes[7];
            EXPECT_GE(rows * strips, height);
            EXPECT_LT(rows * (strips - 1), height);
            // More only where 255 strips would not do.
            EXPECT_TRUE(rows * width <= 1024 || rows == 1 || rows == (height + 254) / 255)
                << rows << " rows";
        }
    }
}

}  // namespace
}  // namespace dialplate

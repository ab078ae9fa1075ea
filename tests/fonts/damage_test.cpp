// Damaged bytes: cut short, bits turned over, noise. With -DSANITIZE=ON a read outside ends the test.
#include "fonts/face.hpp"
#include "fonts/font_file.hpp"
#include "tests/fonts/drawings.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

RasterFace sample_face() {
    std::mt19937 random(30);
    std::vector<Bitmap> cells;
    for (int i = 0; i < 12; ++i)
        cells.push_back(random_blobs(random, 5 + i, 14));
    return face_of(cells);
}

// An exact copy on the heap, so that a read behind the last byte is seen.
PackedFace part_of(const PackedFace& packed, std::size_t bytes) {
    return {packed.packing,
            {packed.bytes.begin(), packed.bytes.begin() + static_cast<std::ptrdiff_t>(bytes)}};
}

TEST(DamagedFace, CutShortAnywhereGivesNoGlyphs) {
    for (const Packing packing : {Packing::plain, Packing::runs}) {
        const PackedFace packed = pack(sample_face(), packing, 1);
        for (std::size_t bytes = 0; bytes < packed.bytes.size(); ++bytes)
            EXPECT_TRUE(unpack(part_of(packed, bytes)).empty()) << "cut after " << bytes;
        EXPECT_EQ(unpack(part_of(packed, packed.bytes.size())).size(), 12U);
    }
}

// Whatever comes back has the shape that the bytes name.
void expect_sound(const PackedFace& packed) {
    const std::vector<Bitmap> cells = unpack(packed);
    if (cells.empty()) return;
    ASSERT_EQ(cells.size(), packed.bytes[3]);
    for (const Bitmap& cell : cells) {
        ASSERT_EQ(cell.height, packed.bytes[1]);
        ASSERT_EQ(cell.pixels.size(),
                  static_cast<std::size_t>(cell.width) * static_cast<std::size_t>(cell.height));
    }
}

TEST(DamagedFace, WithAnyBitTurnedOverIsReadInsideItsBytes) {
    for (const Packing packing : {Packing::plain, Packing::runs}) {
        PackedFace packed = pack(sample_face(), packing, 1);
        for (std::size_t bit = 0; bit < 8 * packed.bytes.size(); ++bit) {
            const auto mask = static_cast<std::uint8_t>(0x80 >> (bit % 8));
            packed.bytes[bit / 8] ^= mask;
            expect_sound(packed);
            packed.bytes[bit / 8] ^= mask;
        }
    }
}

TEST(DamagedFace, MadeOfNoiseIsReadInsideItsBytes) {
    std::mt19937 random(31);
    for (int round = 0; round < 20'000; ++round) {
        PackedFace packed{Packing::runs, std::vector<std::uint8_t>(random() % 80)};
        for (std::uint8_t& byte : packed.bytes)
            byte = static_cast<std::uint8_t>(random());
        if (packed.bytes.size() > 3) {
            packed.bytes[0] = static_cast<std::uint8_t>(random() % 3);
            packed.bytes[3] = static_cast<std::uint8_t>(random() % 6);
        }
        expect_sound(packed);
    }
}

TEST(DamagedFace, WithRunsPastItsRowGivesNoGlyphs) {
    // One cell 3 wide, 1 high, k = 0: a run of 4 (11110), then an empty run inside a row (110 0 ...).
    EXPECT_TRUE(unpack({Packing::runs, {1, 1, 1, 1, 0, 0, 8, 0, 3, 0b11110'000}}).empty());
    EXPECT_TRUE(unpack({Packing::runs, {1, 1, 1, 1, 0, 0, 8, 0, 3, 0b110'0'10'00}}).empty());
    EXPECT_EQ(unpack({Packing::runs, {1, 1, 1, 1, 0, 0, 8, 0, 3, 0b110'10'000}}).size(), 1U);
}

TEST(DamagedFace, WithInkOutsideItsCellGivesNoGlyphs) {
    // Advance 3, height 2: a box 2 wide at column 2, then one 2 high at row 1.
    EXPECT_TRUE(unpack({Packing::plain, {0, 2, 1, 1, 0, 0, 8, 0, 3, 2, 0, 2, 1, 0xFF}}).empty());
    EXPECT_TRUE(unpack({Packing::plain, {0, 2, 1, 1, 0, 0, 8, 0, 3, 0, 1, 1, 2, 0xFF}}).empty());
    EXPECT_EQ(unpack({Packing::plain, {0, 2, 1, 1, 0, 0, 8, 0, 3, 1, 0, 2, 2, 0xFF}}).size(), 1U);
}

TEST(DamagedPicture, CutShortOrWithAnyBitTurnedOverIsReadInsideItsBytes) {
    std::mt19937 random(32);
    const Bitmap picture = random_blobs(random, 28, 120);
    for (const Packing packing : {Packing::plain, Packing::runs}) {
        const std::vector<std::uint8_t> packed = pack_picture(picture, packing);
        ASSERT_FALSE(packed.empty());
        for (std::size_t bytes = 0; bytes < packed.size(); ++bytes) {
            const std::vector<std::uint8_t> part(
                packed.begin(), packed.begin() + static_cast<std::ptrdiff_t>(bytes));
            EXPECT_FALSE(unpack_picture(part).has_value()) << "cut after " << bytes;
        }
        std::vector<std::uint8_t> damaged = packed;
        for (std::size_t bit = 0; bit < 8 * packed.size(); ++bit) {
            damaged[bit / 8] ^= static_cast<std::uint8_t>(0x80 >> (bit % 8));
            if (const auto seen = unpack_picture(damaged)) {
                ASSERT_EQ(
                    seen->pixels.size(),
                    static_cast<std::size_t>(seen->width) * static_cast<std::size_t>(seen->height));
            }
            damaged[bit / 8] = packed[bit / 8];
        }
    }
}

// Every font below is refused or drawn; what matters is that the program is still there.
void rasterise_damaged(const std::string& name, const std::string& content) {
    const std::string path = scratch_file(name, content);
    const FaceResult result = rasterise({.file = path, .size = 8, .characters = U"1A "});
    EXPECT_NE(result.face.has_value(), !result.error.empty());
}

TEST(DamagedFont, IsRefusedOrDrawnButNeverTheEnd) {
    const std::string good = bdf(8,
                                 6,
                                 2,
                                 {{'1', 4, 1, 0, {".#.", "##.", ".#.", ".#.", "###"}},
                                  {'A', 6, 0, 0, {".#.", "#.#", "###", "#.#", "#.#"}}});
    for (std::size_t bytes = 0; bytes < good.size(); bytes += 3)
        rasterise_damaged("cut.bdf", good.substr(0, bytes));
    std::mt19937 random(33);
    for (int round = 0; round < 300; ++round) {
        std::string damaged = good;
        damaged[random() % damaged.size()] = static_cast<char>(random() % 256);
        rasterise_damaged("flipped.bdf", damaged);
    }

    std::ifstream stream(dejavu + "DejaVuSansMono-Bold.ttf", std::ios::binary);
    const std::string outlines((std::istreambuf_iterator<char>(stream)), {});
    ASSERT_GT(outlines.size(), 100'000U);
    for (std::size_t bytes = 1; bytes < outlines.size(); bytes = bytes * 3 / 2 + 1)
        rasterise_damaged("cut.ttf", outlines.substr(0, bytes));
    for (int round = 0; round < 100; ++round) {
        std::string damaged = outlines;
        for (int byte = 0; byte < 40; ++byte)
            damaged[random() % (round < 50 ? 400 : damaged.size())] = static_cast<char>(random());
        rasterise_damaged("flipped.ttf", damaged);
    }
}

TEST(FontTraits, AreReadFromAnyBytes) {
    std::mt19937 random(34);
    const std::string starts[] = {
        "OTTO", "ttcf", std::string("\0\1\0\0", 4), "STARTFONT 2.1\nPIXEL_SIZE ", "%", ""};
    for (int round = 0; round < 20'000; ++round) {
        std::string content = starts[random() % std::size(starts)];
        for (auto more = random() % 60; more > 0; --more)
            content += static_cast<char>(random() % 4 == 0 ? random() % 256 : 0);
        const fonts::FontTraits traits = fonts::read_traits({content.begin(), content.end()});
        // None of the noise spells the name of a table.
        EXPECT_FALSE(traits.coloured);
        EXPECT_EQ(traits.outlines, content.starts_with("%!"));
    }
}

}  // namespace
}  // namespace dialplate

// Mistakes made on purpose in the firmware's side of a whole proof: each must fail it, and be named.
#include "sim/prove/proof_report.hpp"
#include "tests/prove/small_layout.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <sstream>

namespace dialplate {
namespace {

using testing::HasSubstr;
using testing::StartsWith;

// What is sent before the first pixel: seven bytes wake the panel, 0 to 6 (ui/mcu/display_bus.hpp), then the
// window: 2A and four, 7 to 11; 2B and four, 12 to 16; 2C, 17. The ground F800h begins at byte 18.
const std::vector<std::pair<std::string, std::string>> red_ground = {
    {R"("ground": "#000000")", R"("ground": "#F80000")"}};

struct Mutation {
    const char* what;
    const char* bus;
    const char* file;  ///< Of the code that is emitted, without its folder.
    const char* from;
    const char* to;
    const char* place;   ///< Part of what the proof says: where in the traffic,
    const char* during;  ///< and what was being done.
    std::optional<std::int64_t> byte;
    std::optional<int> expected, actual;
    bool collides = false;
};

void PrintTo(const Mutation& mutation, std::ostream* out) {
    *out << mutation.what;
}

Proof proof_of(const Mutation& mutation) {
    const Ready it = small(mutation.bus, red_ground);
    const auto spoil = [&](std::vector<EmittedFile>& code) {
        int found = 0;
        for (EmittedFile& file : code) {
            if (std::filesystem::path(file.name).filename() != mutation.file) continue;
            replace_one(file.text, mutation.from, mutation.to);
            ++found;
        }
        EXPECT_EQ(found, 1) << mutation.file;
    };
    return prove(
        toolchain(), it.layout, it.image, unweighed(), {.image = nullptr, .change = spoil});
}

class Mutations : public testing::TestWithParam<Mutation> {};

TEST_P(Mutations, FailTheProofWithTheFirstByteThatDiffers) {
    const Mutation& mutation = GetParam();
    SCOPED_TRACE(mutation.what);
    const Proof proof = proof_of(mutation);
    EXPECT_EQ(proof.refusal, "");
    EXPECT_FALSE(proof.ok());
    ASSERT_TRUE(proof.compared.first) << proof_details(proof);
    const FirstDifference& first = *proof.compared.first;
    EXPECT_THAT(first.place, HasSubstr(mutation.place));
    EXPECT_THAT(first.during, HasSubstr(mutation.during));
    if (mutation.byte) {
        EXPECT_EQ(first.byte, *mutation.byte);
    }
    if (mutation.expected) {
        EXPECT_EQ(first.expected, *mutation.expected);
    }
    if (mutation.actual) {
        EXPECT_EQ(first.actual, *mutation.actual);
    }
    EXPECT_EQ(proof.faults.collisions > 0, mutation.collides);
    EXPECT_THAT(proof_details(proof), HasSubstr("byte " + std::to_string(first.byte)));
    EXPECT_EQ(proof_json(proof)["ok"], false);
    EXPECT_EQ(proof_json(proof)["first_difference"]["place"], first.place);
}

INSTANTIATE_TEST_SUITE_P(
    All,
    Mutations,
    testing::Values(
        Mutation{
            .what = "a gap of 17 cycles between two bytes",
            .bus = "spi_timed",
            .file = "spi_timed.hpp",
            .from = R"("rjmp .+0                  \n\t"
            "out %[data], %[second]    \n\t"
            "lpm\n\tlpm\n\tlpm         \n\t")",
            .to = R"("nop                       \n\t"
            "out %[data], %[second]    \n\t"
            "lpm\n\tlpm\n\tlpm         \n\t")",
            .place = "of pixel 0 in the window of columns 0 to 63",
            .during = "turning to page \"main\"",
            // The low byte, 00, is lost; the next to arrive is the high one of the second pixel.
            .byte = 19,
            .expected = 0x00,
            .actual = 0xF8,
            .collides = true},
        Mutation{.what = "a carry that stops at round thousands",
                 .bus = "spi",
                 .file = "rom.hpp",
                 .from = "number = rest;",
                 .to = "number = rest - (number != 0 && number % 1000u == 0 ? 1u : 0u);",
                 .place = "",
                 .during = "setting frequency to 1000 on page \"main\"",
                 .byte = std::nullopt,
                 .expected = std::nullopt,
                 .actual = std::nullopt},
        Mutation{.what = "the bytes of a pixel exchanged",
                 .bus = "spi",
                 .file = "display_bus.hpp",
                 .from = "Link::run(static_cast<uint8_t>(colour >> 8), "
                         "static_cast<uint8_t>(colour), count);",
                 .to = "Link::run(static_cast<uint8_t>(colour), "
                       "static_cast<uint8_t>(colour >> 8), count);",
                 .place = "byte 1 of pixel 0 in the window of columns 0 to 63, rows 0 to ",
                 .during = "turning to page \"main\"",
                 .byte = 18,
                 .expected = 0xF8,
                 .actual = 0x00},
        Mutation{.what = "a window without its rows",
                 .bus = "usart_spi",
                 .file = "window_commands.hpp",
                 .from = "set_range<Link>(display_command::set_page_address, pages);",
                 .to = "static_cast<void>(pages);",
                 .place = "command after 0x2A",
                 .during = "turning to page \"main\"",
                 .byte = 12,
                 .expected = 0x2B,
                 .actual = 0x2C},
        Mutation{.what = "a window without its memory write",
                 .bus = "parallel8",
                 .file = "window_commands.hpp",
                 .from = "Link::command(display_command::write_memory_start);",
                 .to = "",
                 .place = "command after 0x2B",
                 .during = "turning to page \"main\"",
                 .byte = 17,
                 .expected = 0x2C,
                 .actual = 0xF8}),
    [](const auto& of) { return "Number" + std::to_string(of.index); });

// Width, height and, for each pixel, its three bytes: a portable pixmap (netpbm, ppm(5)), here without comments.
struct Pixmap {
    int width = 0, height = 0, most = 0;
    std::string bytes;
};

Pixmap read_pixmap(const std::filesystem::path& file) {
    std::ifstream in(file, std::ios::binary);
    Pixmap map;
    std::string magic;
    in >> magic >> map.width >> map.height >> map.most;
    EXPECT_EQ(magic, "P6");
    in.get();
    std::stringstream rest;
    rest << in.rdbuf();
    map.bytes = rest.str();
    return map;
}

TEST(PicturesOfADifference, AreThree) {
    const Ready it = small("spi", red_ground);
    const Proof proof = prove(toolchain(),
                              it.layout,
                              it.image,
                              unweighed(),
                              {.image = nullptr, .change = [](std::vector<EmittedFile>& code) {
                                   for (EmittedFile& file : code) {
                                       if (!file.name.ends_with("display_bus.hpp")) continue;
                                       replace_one(file.text,
                                                   "static_cast<uint8_t>(colour), count);",
                                                   "static_cast<uint8_t>(colour + 1), count);");
                                   }
                               }});
    ASSERT_FALSE(proof.ok());
    const std::filesystem::path folder = std::filesystem::path(DIALPLATE_OUT) / "prove/pictures";
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const auto files = write_pictures(proof, folder);
    ASSERT_EQ(files.size(), 3U);
    const Pixmap expected = read_pixmap(folder / "small-expected.ppm"),
                 actual = read_pixmap(folder / "small-actual.ppm"),
                 difference = read_pixmap(folder / "small-difference.ppm");
    for (const Pixmap* map : {&expected, &actual, &difference}) {
        EXPECT_EQ(map->width, 64);
        EXPECT_EQ(map->height, 48);
        EXPECT_EQ(map->most, 255);
        ASSERT_EQ(map->bytes.size(), 64U * 48U * 3U);
    }
    // The first pixel: F800h is red, FF 00 00; F801h has the least blue, 08 of 8 bits (0 1 of 5 bits repeated).
    EXPECT_THAT(expected.bytes, StartsWith(std::string("\xFF\0\0", 3)));
    EXPECT_THAT(actual.bytes, StartsWith(std::string("\xFF\0\x08", 3)));
    for (std::size_t at = 0; at < expected.bytes.size(); at += 3) {
        const bool same = expected.bytes.compare(at, 3, actual.bytes, at, 3) == 0;
        ASSERT_EQ(difference.bytes.substr(at, 3), same ? std::string(3, '\0') : "\xFF\xFF\xFF");
    }
}

}  // namespace
}  // namespace dialplate

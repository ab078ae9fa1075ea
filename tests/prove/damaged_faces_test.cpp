// Faces whose glyphs were damaged: both ends draw the same nonsense, and the firmware comes to an end with it.
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"
#include "tests/prove/small_layout.hpp"
#include "ui/face_metrics.hpp"
#include "ui/image_format.hpp"

#include <gtest/gtest.h>

#include <random>
#include <string>

namespace dialplate {
namespace {

std::size_t u16_at(const BuiltImage& image, std::size_t at) {
    return image.bytes.at(at) + 256U * image.bytes.at(at + 1);
}

/// Other bits for all glyphs of the first face, their metrics left alone: a stream that says anything.
void damage(BuiltImage& image, unsigned seed) {
    std::mt19937 random(seed);
    const std::size_t at = u16_at(image, u16_at(image, header::at_faces));
    const std::size_t glyphs = image.bytes.at(at + face::glyphs);
    if (image.faces[0].packing == "context") {
        const MemoryBytes bytes(image.bytes.data(), static_cast<std::uint16_t>(image.bytes.size()));
        const Rom<MemoryBytes> rom(bytes);
        const FaceMetrics<Rom<MemoryBytes>> metrics{rom, static_cast<std::uint16_t>(at)};
        // The first byte of a stream decides on all that follows.
        for (std::size_t glyph = 0; glyph < glyphs; ++glyph)
            image.bytes[metrics.of_context(static_cast<std::uint8_t>(glyph)).at] =
                static_cast<std::uint8_t>(random());
        return;
    }
    ASSERT_EQ(image.faces[0].packing, "plain");
    constexpr std::size_t metrics = 5;  // advance, left, top, width, height (ui/image.md)
    const int bits = image.bytes.at(at + face::packing) >= packing::tones ? 2 : 1;
    for (std::size_t glyph = 0; glyph < glyphs; ++glyph) {
        const std::size_t its = at + u16_at(image, at + face::places + 2 * glyph);
        const int pixels = image.bytes.at(its + 3) * image.bytes.at(its + 4);
        for (std::size_t i = 0; i < static_cast<std::size_t>((pixels * bits + 7) / 8); ++i)
            image.bytes[its + metrics + i] = static_cast<std::uint8_t>(random());
    }
}

struct Manner {
    const char* name;
    const char* packing;
    bool smooth;
};

class DamagedFaces : public testing::TestWithParam<Manner> {};
INSTANTIATE_TEST_SUITE_P(Packings,
                         DamagedFaces,
                         testing::Values(Manner{"Plain", "plain", false},
                                         Manner{"Context", "context", false},
                                         Manner{"TonesPlain", "plain", true},
                                         Manner{"TonesContext", "context", true}),
                         [](const auto& of) { return of.param.name; });

}  // namespace

TEST_P(DamagedFaces, AreDrawnAlikeToTheEnd) {
    const Manner& manner = GetParam();
    Ready it = small(
        "usart_spi",
        {{R"({"segments": {"width": 5, "height": 9, "stroke": 1, "gap": 1}})",
          std::string(R"({"file": "DejaVuSans-Bold.ttf", "size": 10, "packing": ")") +
              manner.packing + R"(", "smooth": )" + (manner.smooth ? "true" : "false") + "}"}});
    ASSERT_EQ(it.image.faces.size(), 1U);
    for (const unsigned seed : {1U, 2U, 3U}) {
        SCOPED_TRACE(seed);
        damage(it.image, seed);
        const Proof proof = prove(toolchain(), it.layout, it.image, unweighed());
        EXPECT_EQ(proof.compared.trouble, "") << "the firmware does not come to an end";
        EXPECT_TRUE(proof.ok()) << proof_details(proof);
        EXPECT_GT(proof.compared.frames, 0);
    }
}

}  // namespace dialplate

// Which packings are chosen, against trying every assignment.
#include "sim/image/packing_choice.hpp"

#include "sim/image/decoder_sizes.hpp"
#include "ui/image_format.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace dialplate {
namespace {

RasterFace face(int size, const std::u32string& characters) {
    FaceResult result = rasterise({.file = "/usr/share/fonts/truetype/dejavu/DejaVuSans-Bold.ttf",
                                   .size = size,
                                   .characters = characters});
    EXPECT_TRUE(result.face) << result.error;
    return result.face ? *result.face : RasterFace{};
}

std::u32string ascii() {
    std::u32string all;
    for (char32_t code = U' '; code <= U'~'; ++code)
        all += code;
    return all;
}

// Each face in a packing of its own, 0 plain, 1 runs, 2 context.
std::int64_t all_in(const std::vector<RasterFace>& faces,
                    const std::vector<unsigned>& packings,
                    const PackingSurroundings& surroundings) {
    std::int64_t bytes = 0;
    unsigned used = surroundings.already;
    std::vector<const Bitmap*> cells;
    for (std::size_t i = 0; i < faces.size(); ++i) {
        used |= 1U << packings[i];
        if (packings[i] < 2)
            bytes += static_cast<std::int64_t>(
                pack(faces[i], packings[i] == 0 ? Packing::plain : Packing::runs, 1).bytes.size());
        else
            for (const Glyph& glyph : faces[i].glyphs)
                cells.push_back(&glyph.cell);
    }
    if (!cells.empty()) {
        const ContextTable table = train_contexts(cells);
        bytes += context_model::contexts;  // none of them in tones
        for (std::size_t i = 0; i < faces.size(); ++i) {
            if (packings[i] != 2) continue;
            RasterFace ordered = faces[i];
            order_for_contexts(ordered, true, table);
            bytes += static_cast<std::int64_t>(pack_context(ordered, table, 1).bytes.size());
        }
    }
    return bytes + decoders_size(used, {.decides = surroundings.decides_and_sends});
}

TEST(PackingChoice, TakesAsLittleAsTheBestOfAllAssignments) {
    const std::vector<std::vector<RasterFace>> panels = {
        {face(12, U"AMFM")},
        {face(32, U"0123456789.")},
        {face(48, U"0123456789."), face(12, U"kHz")},
        {face(72, U"0123456789."), face(16, ascii()), face(10, U"AMFMUSBLSB")},
    };
    for (const std::vector<RasterFace>& faces : panels) {
        for (const PackingSurroundings surroundings :
             {PackingSurroundings{},
              PackingSurroundings{0, true},
              PackingSurroundings{packing_bit::runs, false}}) {
            std::vector<FaceToPack> wanted;
            for (const RasterFace& one : faces)
                wanted.push_back({.raster = &one});
            std::int64_t least = std::numeric_limits<std::int64_t>::max();
            std::vector<unsigned> packings(faces.size(), 0);
            for (int n = 0; n < std::pow(3, faces.size()); ++n) {
                for (std::size_t i = 0, rest = static_cast<std::size_t>(n); i < faces.size();
                     ++i, rest /= 3)
                    packings[i] = static_cast<unsigned>(rest % 3);
                least = std::min(least, all_in(faces, packings, surroundings));
            }
            EXPECT_EQ(choose_packings(wanted, surroundings).all_in.value, least)
                << faces.size() << " faces";
        }
    }
}

TEST(PackingChoice, LeavesTheAuthorsPackings) {
    const RasterFace digits = face(48, U"0123456789."), words = face(12, U"kHz");
    const PackingChoices choices =
        choose_packings({{&digits, PackingWish::plain}, {&words, PackingWish::context}});
    EXPECT_EQ(choices.faces[0].face.packing, Packing::plain);
    EXPECT_EQ(choices.faces[1].face.packing, Packing::context);
    EXPECT_TRUE(choices.contexts.has_value());
    EXPECT_GT(choices.faces[0].context.value, 0)
        << "what the alternatives take is told all the same";
}

// 13 strokes in a row: too many for runs and, enlarged, for anything.
TEST(PackingChoice, LeavesAFaceThatFitsNothingWithoutBytes) {
    RasterFace comb;
    comb.height = 1;
    Bitmap cell{26, 1, {}};
    for (int x = 0; x < 26; ++x)
        cell.pixels.push_back(static_cast<std::uint8_t>(x % 2));
    comb.glyphs = {{U'|', cell}};
    const RasterFace words = face(12, U"kHz");
    const PackingChoices choices =
        choose_packings({{.raster = &comb, .enlarged = 2}, {.raster = &words}, {.raster = &comb}});
    EXPECT_TRUE(choices.faces[0].face.bytes.empty());
    EXPECT_FALSE(choices.faces[1].face.bytes.empty());
    EXPECT_EQ(choices.faces[2].face.packing, Packing::plain);
    EXPECT_FALSE(choices.faces[2].face.bytes.empty());
}

}  // namespace
}  // namespace dialplate

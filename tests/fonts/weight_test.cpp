// What faces weigh, against figures that were measured before this code was written, with other code.
#include "fonts/face.hpp"
#include "tests/fonts/drawings.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

constexpr std::u32string_view readout = U"0123456789. -";
constexpr std::u32string_view panel = U" +-./:0123456789AFBCDEGHKLMNPQRSTUVWz";

struct Row {
    std::string file;
    int size;
    std::u32string characters;
    std::size_t cropped;  // bytes of cropped bits alone, each glyph rounded up to bytes
};

std::vector<Row> measured_before() {
    const std::string sans = dejavu + "DejaVuSans.ttf", bold = dejavu + "DejaVuSans-Bold.ttf",
                      mono = dejavu + "DejaVuSansMono-Bold.ttf",
                      liberation_bold = liberation + "LiberationSans-Bold.ttf",
                      b612_bold = b612 + "B612-Bold.otf";
    const std::u32string digits(readout), used(panel), all = ascii();
    // clang-format off
    return {
        {bold, 24, digits, 315}, {bold, 32, digits, 535}, {bold, 48, digits, 1240},
        {bold, 64, digits, 2213}, {bold, 72, digits, 2755},
        {mono, 24, digits, 273}, {mono, 32, digits, 453}, {mono, 48, digits, 1059},
        {mono, 64, digits, 1871}, {mono, 72, digits, 2334},
        {liberation_bold, 24, digits, 247}, {liberation_bold, 32, digits, 445},
        {liberation_bold, 48, digits, 991}, {liberation_bold, 64, digits, 1821},
        {liberation_bold, 72, digits, 2277},
        {b612_bold, 24, digits, 287}, {b612_bold, 32, digits, 520}, {b612_bold, 48, digits, 1153},
        {b612_bold, 64, digits, 2069}, {b612_bold, 72, digits, 2656},
        {sans, 8, all, 267}, {sans, 10, all, 406}, {sans, 12, all, 568}, {sans, 14, all, 744},
        {sans, 16, all, 961}, {sans, 20, all, 1510},
        {sans, 10, used, 182}, {sans, 12, used, 249}, {sans, 14, used, 331}, {sans, 16, used, 446},
        {sans, 20, used, 681}, {bold, 16, used, 497}, {bold, 24, used, 1129},
    };
    // clang-format on
}

TEST(FaceWeights, OfCroppedBitsAreThoseMeasuredBefore) {
    for (const Row& row : measured_before()) {
        SCOPED_TRACE(row.file + " at " + std::to_string(row.size));
        const FaceResult result =
            rasterise({.file = row.file, .size = row.size, .characters = row.characters});
        ASSERT_TRUE(result.face.has_value()) << result.error;
        const std::size_t glyphs = result.face->glyphs.size();
        ASSERT_EQ(glyphs, row.characters.size());
        // Exact with FreeType 2.12 and the fonts of Debian 12, whose bitmaps are those measured then. Another
        // release may round a hinted outline to another box: one percent, ten glyph rows of a byte.
        EXPECT_NEAR(static_cast<double>(cropped_bytes(*result.face) - 7 * glyphs),
                    static_cast<double>(row.cropped),
                    0.01 * static_cast<double>(row.cropped));
        // plain: the same bits with 5 bytes of metrics and 2 of place instead of 7, and a header of 6;
        // less where glyphs share their bytes.
        EXPECT_LE(pack(*result.face, Packing::plain, 1).bytes.size(),
                  cropped_bytes(*result.face) + 6);
    }
}

TEST(FaceWeights, OfRunsStayNearThoseMeasuredBefore) {
    // Measured before: rows that repeat for one bit and Rice codes, inside the cropped box and with runs
    // that go on over the ends of rows; without metrics. Here whole cells are coded, each row by itself.
    // What that adds is bounded: a digit's row has at most two runs of margin, of four bits or so, and
    // about half of the rows repeat.
    struct RunsRow {
        const char* file;
        int size;
        double before;
    };
    const RunsRow rows[] = {
        {"DejaVuSans-Bold.ttf", 24, 166},
        {"DejaVuSans-Bold.ttf", 32, 226},
        {"DejaVuSans-Bold.ttf", 48, 410},
        {"DejaVuSans-Bold.ttf", 64, 578},
        {"DejaVuSans-Bold.ttf", 72, 661},
        {"DejaVuSansMono-Bold.ttf", 48, 366},
        {"DejaVuSansMono-Bold.ttf", 72, 636},
    };
    for (const RunsRow& row : rows) {
        SCOPED_TRACE(std::string(row.file) + " at " + std::to_string(row.size));
        const FaceResult result = rasterise(
            {.file = dejavu + row.file, .size = row.size, .characters = std::u32string(readout)});
        ASSERT_TRUE(result.face.has_value()) << result.error;
        const PackedFace packed = pack_smallest(*result.face, 1);
        EXPECT_EQ(packed.packing, Packing::runs);
        const auto data = static_cast<double>(packed.bytes.size() - 6 - 3 * 13);
        const double margins =
            13 * result.face->height / 2.0;  // bytes: two runs of four bits a row
        EXPECT_GE(data, row.before);
        EXPECT_LE(data, row.before + margins);
    }
}

}  // namespace
}  // namespace dialplate

// Pixels reduced by hand.
#include "sim/image/reduce_picture.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

ColourPicture one_row(const std::vector<std::array<std::uint8_t, 4>>& pixels) {
    ColourPicture picture{static_cast<int>(pixels.size()), 1, {}};
    for (const auto& pixel : pixels)
        picture.rgba.insert(picture.rgba.end(), pixel.begin(), pixel.end());
    return picture;
}

TEST(ReducedPicture, HasInkBelowHalfTheLuminanceOfWhite) {
    struct Row {
        const char* what;
        std::array<std::uint8_t, 4> rgba;
        std::uint8_t expected;
    };
    // Linear light of a code c above 10: ((c / 255 + 0.055) / 1.055) ^ 2.4 (IEC 61966-2-1).
    const Row rows[] = {
        {"black", {0, 0, 0, 255}, 1},
        {"white", {255, 255, 255, 255}, 0},
        {"grey of 187: 0.497 of white", {187, 187, 187, 255}, 1},
        {"grey of 188: 0.503 of white", {188, 188, 188, 255}, 0},
        {"green alone: 0.7152", {0, 255, 0, 255}, 0},
        {"red and blue: 0.2126 + 0.0722", {255, 0, 255, 255}, 1},
        {"black of which 127 / 255 shows, so white is 0.502", {0, 0, 0, 127}, 0},
        {"black of which 128 / 255 shows, so white is 0.498", {0, 0, 0, 128}, 1},
        {"black of which nothing shows", {0, 0, 0, 0}, 0},
    };
    for (const Row& row : rows) {
        const Bitmap bitmap = reduce_to_ink(one_row({row.rgba}));
        EXPECT_FALSE(bitmap.tones);
        EXPECT_EQ(bitmap.pixels, std::vector<std::uint8_t>{row.expected}) << row.what;
    }
}

TEST(ReducedPicture, TakesThePaintThatItDiffersLeastFrom) {
    const std::array<std::uint32_t, 4> map = {0x000000, 0x0000FF, 0x00C000, 0xFFFFFF};
    struct Row {
        const char* what;
        std::array<std::uint8_t, 4> rgba;
        std::uint8_t expected;
    };
    const Row rows[] = {
        {"a paint itself", {0, 0, 255, 255}, 1},
        {"a darker green", {0, 150, 0, 255}, 2},
        {"nearly white", {240, 240, 250, 255}, 3},
        {"nearly black", {20, 20, 20, 255}, 0},
        {"white of which nothing shows: the first paint", {255, 255, 255, 0}, 0},
        {"blue of which all but 5 / 255 shows", {0, 0, 255, 250}, 1},
    };
    for (const Row& row : rows) {
        const Bitmap bitmap = reduce_to_tones(one_row({row.rgba}), map);
        EXPECT_TRUE(bitmap.tones);
        EXPECT_EQ(bitmap.pixels, std::vector<std::uint8_t>{row.expected}) << row.what;
    }
}

// Lightness of a grey with luminance Y: 116 x cuberoot(Y) - 16. Four greys of L* 0, 33, 67 and 100 are 0x000000,
// 0x4E4E4E, 0xA3A3A3 and 0xFFFFFF; half-way, at L* 16, 50 and 84, the neighbour changes.
TEST(ReducedPicture, SharesGreysByLightness) {
    const std::array<std::uint32_t, 4> greys = {0x000000, 0x4E4E4E, 0xA3A3A3, 0xFFFFFF};
    const auto grey = [](std::uint8_t code) {
        return std::array<std::uint8_t, 4>{code, code, code, 255};
    };
    // L* of 30, 60, 100, 140, 190, 230: 11, 25, 42, 58, 77, 91.
    const Bitmap bitmap = reduce_to_tones(
        one_row({grey(30), grey(60), grey(100), grey(140), grey(190), grey(230)}), greys);
    EXPECT_EQ(bitmap.pixels, (std::vector<std::uint8_t>{0, 1, 1, 2, 2, 3}));
}

}  // namespace
}  // namespace dialplate

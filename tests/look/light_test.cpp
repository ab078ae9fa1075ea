#include "sim/look/linear_light.hpp"
#include "sim/look/room_light.hpp"

#include <gtest/gtest.h>

namespace dialplate {

TEST(LightTables, GiveEveryCodeBackAsItCame) {
    for (std::uint32_t code = 0; code < 256; ++code) {
        const std::uint32_t rgb = code << 16 | (255 - code) << 8 | code;
        EXPECT_EQ(light_tables().rgb888(light_tables().light(rgb)), rgb);
    }
}

TEST(LightTables, AreAtMostOneCodeBesideTheFormula) {
    for (int i = 0; i <= 100'000; ++i) {
        const double linear = i / 100'000.0;
        const auto shown = light_tables().rgb888({0.0F, 0.0F, static_cast<float>(linear)});
        ASSERT_LE(std::abs(static_cast<int>(shown) - coded_channel(linear)), 1) << linear;
    }
}

TEST(GlassLight, LosesContrastToWhatTheGlassReflects) {
    struct Row {
        double reflected, contrast;
        const char* source;
    };
    const Row rows[] = {
        {0.0, 500.0, "CON-12"},
        {10.0, 24.7619, "CON-12"},
        {50.0, 5.9406, "CON-12"},
        {100.0, 3.4826, "CON-12"},
        {6.3662, 37.337, "CON-13: 500 lux on 0.04"},
        {127.324, 2.9519, "CON-13: 10000 lux on 0.04"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const GlassLight light{.white = 250.0, .black = 0.5, .reflected = row.reflected};
        EXPECT_NEAR(light.contrast(), row.contrast, 5e-4);
    }
}

TEST(GlassLight, ComesFromTheDisplaysFiguresAndTheRoom) {
    Layout layout;
    EXPECT_NEAR(glass_light(layout, Lux{500.0}).reflected, 6.3662, 5e-5) << "CON-13, 0.04 assumed";
    layout.display.luminance_cd_m2 = 300.0;
    layout.display.panel_contrast = 600.0;
    layout.display.reflectance = 0.08;
    const GlassLight light = glass_light(layout, Lux{500.0});
    EXPECT_EQ(light.white, 300.0);
    EXPECT_EQ(light.black, 0.5);
    EXPECT_NEAR(light.reflected, 2 * 6.3662, 1e-4);
}

TEST(RoomLight, KeepsWhiteAndLiftsBlackByTheShareOfTheReflection) {
    // By hand: (0.5 + 50) / (250 + 50) = 0.168333 of the white's light; 1.055 x 0.168333^(1/2.4) - 0.055 =
    // 0.44714, code 114.
    Rgb888 picture(2, 1, 0xFFFFFF);
    picture.at(1, 0) = 0x000000;
    const Rgb888 seen = in_room_light(picture, {.white = 250.0, .black = 0.5, .reflected = 50.0});
    EXPECT_EQ(seen.at(0, 0), 0xFFFFFFu);
    EXPECT_EQ(seen.at(1, 0), 0x727272u);
}

TEST(RoomLight, ChangesNothingInTheDarkOnAPerfectPanel) {
    Rgb888 picture(16, 16, 0);
    for (std::uint32_t i = 0; i < 256; ++i)
        picture.pixels[i] = i * 0x010101u;
    EXPECT_EQ(in_room_light(picture, {.white = 250.0, .black = 0.0, .reflected = 0.0}), picture);
}

}  // namespace dialplate

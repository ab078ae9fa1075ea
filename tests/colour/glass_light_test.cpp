#include "sim/colour/glass_light.hpp"

#include <gtest/gtest.h>

namespace dialplate {

TEST(LightOnTheGlass, ReflectsWhatThePublishedFormulaSays) {
    // CON-13 (derived): E 500 lx, reflectance 0.04: 6.3662 cd/m2 and 37.337:1; 10000 lx: 127.324, 2.9519:1.
    struct Row {
        double lux, reflected, ratio;
    };
    for (const Row& row : {Row{500, 6.3662, 37.337}, Row{10000, 127.324, 2.9519}}) {
        Layout layout;
        layout.display.luminance_cd_m2 = 250;
        layout.display.panel_contrast = 500;
        layout.display.reflectance = 0.04;
        const GlassLight light = glass_light(layout, Lux{row.lux});
        EXPECT_NEAR(light.reflected, row.reflected, 0.001);
        EXPECT_NEAR(light.contrast(), row.ratio, 0.001);
        EXPECT_NEAR(luminance_ratio(light.of(0.0), light.of(1.0)), row.ratio, 0.001);
    }
}

TEST(LightOnTheGlass, AddsReflectionToBoth) {
    // CON-12 (derived): Lw 250, Lb 0.5.
    struct Row {
        double reflected, ratio;
    };
    for (const Row& row : {Row{0, 500}, Row{10, 24.7619}, Row{50, 5.9406}, Row{100, 3.4826}}) {
        const GlassLight light{.white = 250, .black = 0.5, .reflected = row.reflected};
        EXPECT_NEAR(light.contrast(), row.ratio, 1e-4);
    }
}

TEST(LightOnTheGlass, GivesBackTheReflectionForAWantedRatio) {
    // CON-14 (derived): Lr = (Lw - CR Lb) / (CR - 1): 3:1 at 124.25, 4.5:1 at 70.7857 cd/m2.
    EXPECT_NEAR(
        (GlassLight{.white = 250, .black = 0.5, .reflected = 124.25}.contrast()), 3.0, 1e-9);
    EXPECT_NEAR(
        (GlassLight{.white = 250, .black = 0.5, .reflected = 70.7857}.contrast()), 4.5, 1e-6);
}

}  // namespace dialplate

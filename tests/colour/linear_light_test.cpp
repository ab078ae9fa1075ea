#include "sim/colour/linear_light.hpp"

#include <gtest/gtest.h>

#include <cmath>

namespace dialplate {

TEST(LinearLight, TurnsAChannelIntoTheLightThatIsPublished) {
    EXPECT_NEAR(linear_light(119), 0.184475, 1e-6) << "CON-01";
    EXPECT_NEAR(linear_light(128), 0.215861, 1e-6) << "CON-01";
    EXPECT_DOUBLE_EQ(linear_light(0), 0.0);
    EXPECT_DOUBLE_EQ(linear_light(255), 1.0);
}

TEST(LinearLight, HasNoCodeBetweenTheOldAndTheNewBreakPoint) {
    // CON-02: 0.03928 until May 2021, 0.04045 since; both give the same for all codes.
    for (int code = 0; code <= 255; ++code) {
        const double c = code / 255.0;
        const double old = c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
        ASSERT_DOUBLE_EQ(linear_light(static_cast<std::uint8_t>(code)), old) << code;
    }
}

TEST(LinearLight, WeighsTheColoursAsPublished) {
    EXPECT_NEAR(relative_luminance(0xFF0000), 0.2126, 1e-12) << "CON-03";
    EXPECT_NEAR(relative_luminance(0x00FF00), 0.7152, 1e-12) << "CON-03";
    EXPECT_NEAR(relative_luminance(0x0000FF), 0.0722, 1e-12) << "CON-03";
    EXPECT_NEAR(relative_luminance(0xFFA500), 0.481703, 1e-6) << "CON-03";
}

TEST(LinearLight, ComesBackAsTheCodeThatItWas) {
    for (int code = 0; code <= 255; ++code)
        EXPECT_EQ(coded_channel(linear_light(static_cast<std::uint8_t>(code))), code);
    EXPECT_EQ(coded_channel(-0.1), 0) << "what cannot be shown is clamped";
    EXPECT_EQ(coded_channel(1.1), 255);
}

}  // namespace dialplate

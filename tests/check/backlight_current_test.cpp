#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;

TEST(BacklightCurrent, FollowsWhatAPinGives) {
    struct Row {
        Wiring::Backlight backlight;
        std::optional<double> current_ma;
        std::optional<Severity> found;
        const char* source;
    };
    const auto pin = Wiring::Backlight::logic_pin;
    const Row rows[] = {
        {pin, 80, Severity::must, "SAF-06: 80 > 40 fails (read / memory)"},
        {pin, 40, Severity::should, "SAF-06: 40 mA just survives (memory)"},
        {pin, 41, Severity::must, "one more"},
        {pin, 20, {}, "SAF-06: 20 mA advised (memory)"},
        {pin, 21, Severity::should, "one more"},
        {pin, {}, Severity::should, "the part does not give it"},
        {Wiring::Backlight::switched, 80, {}, "a transistor carries it"},
        {Wiring::Backlight::supply, 80, {}, "the supply carries it"},
        {Wiring::Backlight::unstated, 80, {}, "nothing is said"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Sample s;
        s.layout.wiring.backlight = row.backlight;
        s.layout.display.backlight_ma = row.current_ma;
        const auto found = s.found("backlight-current");
        ASSERT_EQ(found.size(), row.found ? 1u : 0u);
        if (row.found) {
            EXPECT_EQ(found[0].severity, *row.found);
        }
    }
}

}  // namespace dialplate

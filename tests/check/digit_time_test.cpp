#include "tests/check/examined.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {

using ::testing::HasSubstr;

namespace {

/// A readout of one digit on a bus by hardware SPI, timed, at 16 MHz.
std::vector<Finding> with(const std::string& face, double within_ms) {
    return sample::examined_by(
        "digit-time",
        R"({"title": "digits", "display": "2.8in-ILI9341", "turn": 90,
            "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi_timed", "clock_mhz": 8},
            "paints": {"ink": "#FFFFFF", "ground": "#000000"}, "faces": {"figures": )" +
            face + R"(}, "values": {"count": {"type": "number", "min": 0, "max": 9, "start": 0}},
            "pages": [{"name": "main", "ground": "ground", "items": [
              {"kind": "readout", "name": "dial", "at": [10, 10], "size": [100, 80], "value": "count",
               "face": "figures", "ink": "ink", "ground": "ground", "groups": [1], "within_ms": )" +
            std::to_string(within_ms) + "}]}]}");
}

constexpr const char* segments =
    R"({"segments": {"width": 24, "height": 48, "stroke": 6, "gap": 0}})";
constexpr const char* smoothed =
    R"({"file": "DejaVuSansMono-Bold.ttf", "size": 48, "smooth": true})";

}  // namespace

TEST(DigitTime, HoldsTheMedianAgainstTheTimeAskedFor) {
    // Measured on a simulated ATmega328P by tests/firmware/digit_times: half of the 90 pairs take 24,470 cycles or
    // less by what differs, 1.53 ms, and 56,358 as whole cells, 3.52 ms. Small updates of small layouts are predicted within 5 %.
    EXPECT_TRUE(with(segments, 3.7).empty());
    EXPECT_TRUE(with(segments, 1.6).empty());
    const Finding finding = sample::only(with(segments, 1.45));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.pointer, "/pages/0/items/0");
    EXPECT_NEAR(*finding.measured, 24470 / 16e3, 0.05 * 24470 / 16e3);
    EXPECT_NEAR(*finding.required, 1.45, 1e-9);
    EXPECT_THAT(finding.message, HasSubstr("no packing is so fast"));
    EXPECT_THAT(finding.message, HasSubstr("segment, drawn by what differs"));
}

TEST(DigitTime, OffersThePackingThatTheAuthorRuledOut) {
    // 48 px digits of DejaVu Sans Mono Bold, measured: 52,022 cycles in runs, 46,126 in context: 3.25 and 2.88 ms.
    const std::string face = R"({"file": "DejaVuSansMono-Bold.ttf", "size": 48)";
    EXPECT_TRUE(with(face + "}", 3.1).empty()) << "chosen by time";
    const Finding finding = sample::only(with(face + R"(, "packing": "runs"})", 3.1));
    EXPECT_NEAR(*finding.measured, 52022 / 16e3, 0.05 * 52022 / 16e3);
    EXPECT_THAT(finding.message, HasSubstr("context takes "));
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/faces/figures/packing");
    EXPECT_EQ(finding.cure[0].value, "\"automatic\"");
}

TEST(DigitTime, TellsThatASmoothedReadoutMissesItsTime) {
    const Finding finding = sample::only(with(smoothed, 3.8));
    EXPECT_THAT(finding.message, HasSubstr("in smoothed face \"figures\""));
    EXPECT_THAT(finding.message, HasSubstr("context takes "));
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/faces/figures/smooth");
    EXPECT_EQ(finding.cure[0].value, "false");
}

}  // namespace dialplate

#include "sim/check/flashing_pixels.hpp"
#include "sim/layout/colour.hpp"
#include "tests/check/examined.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {

using ::testing::HasSubstr;

namespace {

/// A 2.8 inch display of 320 x 240 pixels of 0.180 mm at 500 mm: 1500 mm2 (SAF-11) are 46296.3 pixels.
struct Document {
    std::string on = "#FFFFFF", off = "#000000";
    std::string values = R"("alarm": {"type": "flag", "start": false, "per_second": 8})";
    std::string faces = R"("words": {"file": "legend14.bdf", "size": 14})";
    std::string items{};
    std::string more{};         ///< Members of the document.
    std::string other_pages{};  ///< Behind the first one.
};

std::string text_of(const Document& document) {
    return R"({"title": "flashing", "display": "2.8in-ILI9341", "turn": 90,
        "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
        "paints": {"on": ")" +
           document.on + R"(", "off": ")" + document.off + R"(", "ground": "#000000"},)" +
           document.more + R"("looks": {"plain": {"idle": {"ink": "on", "fill": "off"}}},
        "faces": {)" +
           document.faces + R"(}, "values": {)" + document.values +
           R"(}, "pages": [{"name": "main", "ground": "ground", "items": [)" + document.items +
           "]}" + document.other_pages + "]}";
}

std::string lamp(int width, int height, const std::string& value = "alarm") {
    return R"({"kind": "lamp", "at": [0, 0], "size": [)" + std::to_string(width) + ", " +
           std::to_string(height) + R"(], "value": ")" + value +
           R"(", "when": true, "face": "words", "lit": {"ink": "on", "fill": "on"}, "unlit": {"ink": "off", "fill": "off"}})";
}

std::vector<Finding> found(const Document& document) {
    return sample::examined_by("flashing", text_of(document));
}

/// A flag that changes so often.
std::string flag(double per_second) {
    return R"("alarm": {"type": "flag", "start": false, "per_second": )" +
           std::to_string(per_second) + "}";
}

}  // namespace

TEST(Flashing, TellsAFlashFromAChange) {
    struct Row {
        std::uint32_t one, other;
        Flash flash;
        const char* source;
    };
    const Row rows[] = {
        {0x000000, 0xFFFFFF, Flash::general, "SAF-10: black and white (read)"},
        // 0.85 and 1.0 of relative luminance: grey of code 237 (linear 0.8469).
        {0xFFFFFF, 0xEDEDED, Flash::none, "SAF-10: both above 0.80 are no flash (read)"},
        // 10 % of white and just less, as RGB565 holds them: 0x5A5D5A is linear 0.11, 0x525152 is 0.083.
        {0x5A5D5A, 0x000000, Flash::general, "SAF-10: 10 % of white or more"},
        {0x525152, 0x000000, Flash::none, "SAF-10: less than 10 %"},
        {0xFF0000, 0x00AE00, Flash::red, "SAF-12: saturated red (read)"},
        {0xFF0000, 0xFF0000, Flash::none, "no change"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(flash_between(pack_rgb565(row.one), pack_rgb565(row.other)), row.flash);
        EXPECT_EQ(flash_between(pack_rgb565(row.other), pack_rgb565(row.one)), row.flash);
    }
}

TEST(Flashing, FollowsThePublishedRate) {
    struct Row {
        double changes_per_second;
        bool found;
        const char* source;
    };
    const Row rows[] = {
        {4, false, "SAF-10: black and white at 2 Hz pass (read)"},
        {6, false, "SAF-09: three flashes a second just pass (read)"},
        {6.1, true, "SAF-09: a little more"},
        {8, true, "SAF-10: 4 Hz fail (read)"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        const auto of_row =
            found({.values = flag(row.changes_per_second), .items = lamp(320, 240)});
        ASSERT_EQ(of_row.size(), row.found ? 1u : 0u);
        if (!row.found) continue;
        EXPECT_EQ(of_row[0].severity, Severity::must);
        EXPECT_NEAR(*of_row[0].measured, row.changes_per_second / 2.0, 1e-9);
        EXPECT_THAT(of_row[0].message, HasSubstr("on 2488 mm2"));  // SAF-11: the whole panel
    }
}

TEST(Flashing, LeavesSmallAreasAlone) {
    // SAF-11 (read, derived): a lamp of 20 x 10 mm counts 200 mm2. 320 x 144 = 46080 pixels pass, 46400 fail.
    EXPECT_TRUE(found({.items = lamp(111, 56)}).empty());
    EXPECT_TRUE(found({.items = lamp(320, 144)}).empty());
    EXPECT_EQ(found({.items = lamp(320, 145)}).size(), 1u);
}

TEST(Flashing, AddsUpWhatFlashesTogether) {
    const std::string second =
        R"(, {"kind": "lamp", "at": [0, 100], "size": [320, 100], "value": "other", "when": true, "face": "words",
            "lit": {"ink": "on", "fill": "on"}, "unlit": {"ink": "off", "fill": "off"}})";
    const std::string other = R"(, "other": {"type": "flag", "start": false, "per_second": )";
    // 64000 pixels of two values; a slow one does not count.
    const auto both = found({.values = flag(8) + other + "7}", .items = lamp(320, 100) + second});
    EXPECT_THAT(sample::only(both).message, HasSubstr("1 other item"));
    EXPECT_TRUE(
        found({.values = flag(8) + other + "5}", .items = lamp(320, 100) + second}).empty());
}

TEST(Flashing, CountsTheBlocksOfAMeterAndNotTheGapsBetween) {
    // Blocks of 6 px and gaps of 2: 40 blocks in 318 columns, 240 columns lit. 240 x 192 = 46080, 240 x 193 = 46320.
    for (const int bar : {192, 193}) {
        const std::string meter =
            R"({"kind": "meter", "at": [0, 0], "size": [318, 200], "value": "signal", "from": 0,
                "to": 100, "bar": )" +
            std::to_string(bar) +
            R"(, "blocks": {"size": 6, "gap": 2}, "ink": "on", "unlit": "off", "ground": "ground"})";
        const auto of_bar = found(
            {.values =
                 R"("signal": {"type": "level", "min": 0, "max": 100, "start": 0, "per_second": 10})",
             .items = meter});
        EXPECT_EQ(of_bar.size(), bar == 193 ? 1u : 0u) << bar;
    }
}

TEST(Flashing, CountsTheSegmentsOfDigitsThatChange) {
    // At 400 mm 960 mm2 count, 29630 pixels. A digit of 255 x 238 with strokes of 78, that is with two holes of 99 x 2:
    // from "1" to "8" all but the bars on the right, 78 x 238, light up: some 41700. From "0" to "9" just the middle bar
    // and the lower left one change, less than 255 x 78 and 78 x 119 together, though the cell is as large.
    const auto digit = [](int min, int max) {
        return found(
            {.values = R"("count": {"type": "number", "min": )" + std::to_string(min) +
                       R"(, "max": )" + std::to_string(max) + R"(, "per_second": 10})",
             .faces =
                 R"("large": {"segments": {"width": 255, "height": 238, "stroke": 78, "gap": 0}})",
             .items = R"({"kind": "readout", "at": [0, 1], "size": [320, 238], "value": "count",
                 "face": "large", "ink": "on", "ground": "off", "groups": [1]})",
             .more = R"("viewing": {"distance_mm": 400},)"});
    };
    EXPECT_EQ(digit(1, 8).size(), 1u);
    EXPECT_TRUE(digit(0, 9).empty());
}

TEST(Flashing, CountsRepeatsOfKeys) {
    const auto with_key = [](int every_ms) {
        return found(
            {.values = R"("alarm": {"type": "flag", "start": false})",
             .faces = R"("words": {"file": "legend14.bdf", "size": 14})",
             .items =
                 lamp(320, 160) +
                 R"(, {"kind": "key", "at": [10, 180], "size": [60, 50], "text": "A", "face": "words",
                          "look": "plain", "repeat": true, "tap": {"toggle": "alarm"}})",
             .more = R"("touch": {"repeat_every_ms": )" + std::to_string(every_ms) + "},"});
    };
    // SAF-09: six changes a second: every 166.7 ms.
    EXPECT_TRUE(with_key(167).empty());
    const Finding finding = sample::only(with_key(166));
    EXPECT_THAT(finding.message, HasSubstr("\"repeat_every_ms\" of 167 or more"));
}

TEST(Flashing, JudgesTurnsOfPagesAndPalettesByHand) {
    // Five taps a second (from memory: some 50 in ten seconds with one finger) are 2.5 flashes: at a limit of 2.4 the author asks for, both are too fast.
    const std::string key =
        R"({"kind": "key", "at": [10, 10], "size": [60, 50], "text": "A", "face": "words",
            "look": "plain", "tap": {"page": "white"}})";
    const auto with_limit = [&](const std::string& limit, const std::string& palettes) {
        return found({.items = key,
                      .more = palettes + limit,
                      .other_pages = R"(, {"name": "white", "ground": "on", "items": []})"});
    };
    EXPECT_TRUE(with_limit("", "").empty());
    const std::string limit = R"("thresholds": {"flashing": {"most_per_second": 2.4}},)";
    EXPECT_THAT(sample::only(with_limit(limit, "")).message,
                HasSubstr("the turn between pages \"main\" and \"white\""));
    const auto both = with_limit(limit, R"("palettes": {"day": {"ground": "#FFFFFF"}},)");
    ASSERT_EQ(both.size(), 2u);
    EXPECT_THAT(both[0].message + both[1].message, HasSubstr("in another palette"));
}

}  // namespace dialplate

// A digit that becomes another by what differs, against the slow twin: the page drawn whole with the new number.
#include "tests/ui/page.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace dialplate {
namespace {

constexpr const char* bold = "/usr/share/fonts/truetype/dejavu/DejaVuSansMono-Bold.ttf";

struct Bench {
    Layout layout;
    BuiltImage image;
    std::unique_ptr<Prototype> prototype;

    Bench(const std::string& face, const std::string& readout, int digits) {
        const std::string text =
            R"({"title": "digits", "display": "2.8in-ILI9341", "turn": 90, "mcu": {"part": "ATmega328P", "clock_mhz": 16},
 "bus": {"kind": "spi", "clock_mhz": 8}, "paints": {"dark": "#000000", "light": "#FFFFFF"},
 "faces": {"figures": {)" +
            face + R"(}},
 "values": {"number": {"type": "number", "min": 0, "max": )" +
            std::string(static_cast<std::size_t>(digits), '9') + R"(, "start": 0},
   "step": {"type": "choice", "choices": [{"text": "1", "number": 1}, {"text": "10", "number": 10}]}},
 "pages": [{"name": "main", "ground": "dark", "items": [{"kind": "readout", "at": [20, 20], "size": [280, 200],
 "face": "figures", "ink": "light", "ground": "dark", "value": "number", "groups": [)" +
            std::to_string(digits) + R"(], "within_ms": 0.1)" + readout + R"(}]}]})";
        const Reading reading = read_layout(text, "digits.json", DIALPLATE_TREE "/layouts");
        for (const Finding& f : reading.findings)
            ADD_FAILURE() << gnu_line("digits.json", f);
        if (!reading.layout) return;
        layout = *reading.layout;
        const Building building = build_image(layout);
        for (const Finding& f : building.findings)
            ADD_FAILURE() << gnu_line("digits.json", f);
        if (!building.image) return;
        image = *building.image;
        prototype = std::make_unique<Prototype>(layout, image);
        prototype->settle();
    }

    /// Sets a value and returns what that sent; the glass must be as one that is drawn whole.
    BusCounters set(ValueId value, std::int32_t to) {
        prototype->set(value, to);
        const BusCounters sent = prototype->settle().sent;
        const auto glass = prototype->glass();
        prototype->redraw();
        EXPECT_TRUE(glass == prototype->glass()) << prototype->get(0);
        EXPECT_EQ(sent.pixels_twice, 0);
        EXPECT_EQ(sent.short_windows, 0);
        EXPECT_EQ(sent.bad_windows, 0);
        return sent;
    }
};

struct DrawnFace {
    const char* name;
    std::string face;
};
const DrawnFace drawn_faces[] = {
    {"enlarged twice, plain",
     R"("file": "figures24.bdf", "size": 24, "scale": 2, "packing": "plain")"},
    {"enlarged three times, runs",
     R"("file": "figures16.bdf", "size": 16, "scale": 3, "packing": "runs")"},
    {"enlarged four times, plain",
     R"("file": "figures16.bdf", "size": 16, "scale": 4, "packing": "plain")"},
    {"large, runs, enlarged",
     std::string(R"("file": ")") + bold + R"(", "size": 60, "scale": 2, "packing": "runs")"},
    {"segments", R"("segments": {"width": 24, "height": 48, "stroke": 6, "gap": 4})"},
    {"segments of odd measures",
     R"("segments": {"width": 23, "height": 51, "stroke": 7, "gap": 3})"},
    {"segments as thin as can be",
     R"("segments": {"width": 5, "height": 9, "stroke": 1, "gap": 1})"},
    {"segments without room between",
     R"("segments": {"width": 13, "height": 18, "stroke": 5, "gap": 0})"},
};

TEST(ChangedRuns, LeaveEveryPairOfDigitsAsDrawnWhole) {
    for (const DrawnFace& row : drawn_faces) {
        SCOPED_TRACE(row.name);
        Bench bench(row.face, "", 1);
        ASSERT_NE(bench.prototype, nullptr);
        ASSERT_TRUE(bench.image.faces.front().changed_runs) << "the case tests nothing";
        const std::int64_t cell = std::int64_t{bench.image.faces.front().digit_advance} *
                                  bench.image.faces.front().height;
        std::int64_t pixels = 0;
        for (int was = 0; was < 10; ++was) {
            for (int is = 0; is < 10; ++is) {
                if (was == is) continue;
                bench.set(0, was);
                const BusCounters sent = bench.set(0, is);
                EXPECT_LE(sent.pixels, cell) << was << " to " << is;
                pixels += sent.pixels;
            }
        }
        EXPECT_LT(pixels, 90 * cell * 3 / 4);
    }
}

TEST(ChangedRuns, KeepTheMarkOfTheTunedDigitRight) {
    for (const char* mark : {"underline", "invert"}) {
        for (const DrawnFace& row : drawn_faces) {
            SCOPED_TRACE(std::string(row.name) + ", " + mark);
            if (row.face.find("size\": 60") != std::string::npos) continue;  // two do not fit
            Bench bench(row.face,
                        R"(, "tuning": {"value": "step", "mark": ")" + std::string(mark) + "\"}",
                        2);
            ASSERT_NE(bench.prototype, nullptr);
            std::int32_t number = 0;
            for (int i = 0; i < 60; ++i) {
                bench.prototype->set(1, i / 3 % 2);
                number = (number + 37) % 100;
                bench.set(0, number);
            }
        }
    }
}

TEST(ChangedRuns, AreLeftAloneWhereTheWholeCellTakesLess) {
    // So small that a window costs as much as the cell.
    Bench small(R"("file": "legend9.bdf", "size": 9, "packing": "runs")", "", 1);
    EXPECT_FALSE(small.image.faces.front().changed_runs);
    Bench context(R"("file": "figures32.bdf", "size": 32, "packing": "context")", "", 1);
    EXPECT_FALSE(context.image.faces.front().changed_runs);
}

}  // namespace
}  // namespace dialplate

// Fitting faces to a budget, held against trying every way.
#include "sim/fit/fit.hpp"

#include "sim/check/check.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/ledger.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <sstream>

namespace dialplate {
namespace {

// A dial that may have two fonts and a few sizes, words that may have a few sizes, and a face that stays.
const std::string document = R"({
  "title": "Two to fit", "display": "2.8in-ILI9341", "turn": 90,
  "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
  "paints": {"ground": "#101418", "ink": "#F2EFE6"},
  "faces": {
    "dial":  {"file": "DejaVuSans-Bold.ttf", "size": 40, "packing": "plain",
              "may": {"files": ["DejaVuSans.ttf"], "size": [26, 29]}},
    "words":   { "size": 16 ,"file":"DejaVuSans.ttf","may":{"size":[20,23]} },
    "unit": {"file": "figures24.bdf", "size": 24}
  },
  "values": {"frequency": {"type": "number", "unit": "Hz", "min": 0, "max": 29999999, "role": "frequency"}},
  "pages": [{"name": "main", "ground": "ground", "items": [
    {"kind": "readout", "at": [8, 8], "size": [300, 60], "value": "frequency", "face": "dial", "ink": "ink"},
    {"kind": "legend", "at": [8, 100], "size": [100, 32], "text": "Listening", "face": "words", "ink": "ink"},
    {"kind": "legend", "at": [8, 150], "size": [60, 40], "text": "6", "face": "unit", "ink": "ink"}
  ]}]
})";

Layout layout_of(const std::string& text) {
    Reading reading = read_layout(text, "fit.json", DIALPLATE_TREE "/layouts");
    EXPECT_TRUE(reading.layout) << (reading.findings.empty()
                                        ? ""
                                        : gnu_line("fit.json", reading.findings.front()));
    return reading.layout.value_or(Layout{});
}

// One way, as slowly as can be: with no bound, no order, no memory.
struct Way {
    FaceChoice dial, words;
    std::int64_t bytes = 0;
    double smallest = 0;  // minutes of arc, dial and words
    bool keeps_musts = false;
};

std::vector<Way> every_way(const Layout& layout) {
    std::vector<Way> ways;
    const auto sizes = [](int own, int from, int to) {
        std::vector<int> all = {own};
        for (int size = from; size <= to; ++size)
            all.push_back(size);
        return all;
    };
    for (const char* file : {"DejaVuSans-Bold.ttf", "DejaVuSans.ttf"}) {
        for (const int dial : sizes(40, 26, 29)) {
            for (const int words : sizes(16, 20, 23)) {
                Layout changed = layout;
                changed.faces[0].file = file;
                changed.faces[0].size = dial;
                changed.faces[0].packing = PackingWish::automatic;
                changed.faces[1].size = words;
                const Building building = build_image(changed);
                if (!building.image) continue;
                const Ledger ledger = account(changed, *building.image);
                Way way{{file, dial}, {"DejaVuSans.ttf", words}, ledger.flash.total.value};
                way.keeps_musts = true;
                for (const Finding& finding : check({changed, *building.image, ledger}))
                    if (finding.severity == Severity::must && counts(finding))
                        way.keeps_musts = false;
                int capital = std::numeric_limits<int>::max();
                for (const FaceMeasure& measure : building.image->measures)
                    if (measure.face < 2) capital = std::min(capital, measure.capital.value_or(0));
                // 2.8 in, 57.6 mm for 320 px upright pixels of 0.18 mm, at 500 mm; small angles, so a minute of arc
                // is a radian / 3437.75: good to 0.01 minute here.
                way.smallest = capital * layout.pitch_y().value / 500.0 * 3437.75;
                ways.push_back(way);
            }
        }
    }
    return ways;
}

TEST(Fit, FindsTheSmallestAngleThatTryingEveryWayFinds) {
    const Layout layout = layout_of(document);
    const std::vector<Way> ways = every_way(layout);
    ASSERT_EQ(ways.size(), 50U);
    std::int64_t least = std::numeric_limits<std::int64_t>::max(), most = 0;
    for (const Way& way : ways) {
        if (!way.keeps_musts) continue;
        least = std::min(least, way.bytes);
        most = std::max(most, way.bytes);
    }
    ASSERT_LT(least, most);
    for (std::int64_t budget = least; budget <= most; budget += (most - least) / 3 + 1) {
        SCOPED_TRACE(budget);
        double best = 0;
        for (const Way& way : ways)
            if (way.keeps_musts && way.bytes <= budget) best = std::max(best, way.smallest);
        const Fit fitted = fit(layout, {.flash = Bytes{budget}});
        ASSERT_TRUE(fitted.chosen);
        EXPECT_LE(fitted.chosen->flash.value, budget);
        EXPECT_TRUE(fitted.chosen->unmet.empty());
        EXPECT_NEAR(fitted.chosen->margin * required_angle(layout).value, best, 0.02);
    }
    // Each step of the front takes what the best of all ways with such an angle takes.
    const Fit fitted = fit(layout, {.flash = Bytes{most}});
    ASSERT_GT(fitted.front.size(), 1U);
    for (const Fitting& step : fitted.front) {
        std::int64_t fewest = std::numeric_limits<std::int64_t>::max();
        for (const Way& way : ways)
            if (way.keeps_musts && way.smallest > step.margin * required_angle(layout).value - 0.02)
                fewest = std::min(fewest, way.bytes);
        EXPECT_EQ(step.flash.value, fewest);
    }
}

TEST(Fit, SaysWhatComesNearestWhenNothingFits) {
    const Layout layout = layout_of(document);
    const Fit fitted = fit(layout, {.flash = Bytes{100}});
    EXPECT_FALSE(fitted.chosen);
    ASSERT_TRUE(fitted.nearest);
    EXPECT_TRUE(fitted.nearest->unmet.empty());
    EXPECT_EQ(fitted.nearest->flash, fitted.front.front().flash);
}

TEST(Fit, NamesTheMustsThatNoWayKeeps) {
    // Room for ten rows: no size has less.
    std::string tight = document;
    const std::string room = "\"size\": [100, 32]";
    tight.replace(tight.find(room), room.size(), "\"size\": [100, 10]");
    const Fit fitted = fit(layout_of(tight), {.flash = Bytes{20000}});
    EXPECT_FALSE(fitted.chosen);
    EXPECT_TRUE(fitted.front.empty());
}

TEST(Fit, LeavesAKeptFaceAsItIs) {
    const Layout layout = layout_of(document);
    const FitWish wish{.flash = Bytes{20000}, .keep = {0}};
    const Fit fitted = fit(layout, wish);
    ASSERT_TRUE(fitted.chosen);
    EXPECT_EQ(fitted.chosen->faces[0].choice, (FaceChoice{"DejaVuSans-Bold.ttf", 40}));
    EXPECT_EQ(fitted.chosen->faces[0].packing, "plain");
    for (const Change& change : changes_for(layout, *fitted.chosen, wish))
        EXPECT_EQ(change.pointer.rfind("/faces/dial", 0), std::string::npos) << change.pointer;
}

TEST(Fit, LeavesAsideWhatNoFaceMends) {
    std::string twice = document;
    const std::string last = R"({"kind": "legend", "at": [8, 150])";
    twice.replace(twice.find(last), last.size(), R"({"kind": "legend", "at": [300, 150])");
    const Fit fitted = fit(layout_of(twice), {.flash = Bytes{20000}});
    ASSERT_FALSE(fitted.standing.empty());
    EXPECT_EQ(fitted.standing.front().rule, "inside-glass");
    EXPECT_TRUE(fitted.chosen);
}

TEST(Fit, MakesFacesSmoothWithWhatIsLeft) {
    std::string document_with_smooth = document;
    const std::string may = "\"size\": [26, 29]}";
    document_with_smooth.replace(
        document_with_smooth.find(may), may.size(), "\"size\": [26, 29], \"smooth\": true}");
    const Layout layout = layout_of(document_with_smooth);
    const Fit plenty = fit(layout, {.flash = Bytes{20000}});
    ASSERT_TRUE(plenty.chosen);
    EXPECT_TRUE(plenty.chosen->faces[0].choice.smooth);
    EXPECT_FALSE(plenty.chosen->faces[1].choice.smooth) << "it may not";
    // With no more than the sharp faces take there is nothing left for tones and their decoder.
    const Fit sharp = fit(layout_of(document), {.flash = Bytes{20000}});
    ASSERT_TRUE(sharp.chosen);
    EXPECT_GE(plenty.chosen->margin, sharp.chosen->margin);
    const Fit tight = fit(layout, {.flash = sharp.chosen->flash});
    ASSERT_TRUE(tight.chosen);
    EXPECT_FALSE(tight.chosen->faces[0].choice.smooth);
    EXPECT_EQ(tight.chosen->margin, sharp.chosen->margin);

    const Amended amended =
        amend(document_with_smooth, changes_for(layout, *plenty.chosen, {.flash = Bytes{20000}}));
    ASSERT_TRUE(amended.text) << amended.mistake;
    EXPECT_TRUE(layout_of(*amended.text).faces[0].smooth);
}

TEST(Fit, ChangesNothingButTheFacesInTheDocument) {
    const Layout layout = layout_of(document);
    const FitWish wish{.flash = Bytes{20000}};
    const Fit fitted = fit(layout, wish);
    ASSERT_TRUE(fitted.chosen);
    const Amended amended = amend(document, changes_for(layout, *fitted.chosen, wish));
    ASSERT_TRUE(amended.text) << amended.mistake;
    // All lines but the two that hold the faces, byte for byte.
    std::istringstream before(document), after(*amended.text);
    std::string a, b;
    while (std::getline(before, a)) {
        ASSERT_TRUE(std::getline(after, b));
        const bool face =
            a.find("\"dial\":") != std::string::npos || a.find("\"words\":") != std::string::npos;
        if (!face) {
            EXPECT_EQ(a, b);
        }
    }
    const Layout again = layout_of(*amended.text);
    for (std::size_t i = 0; i < again.faces.size(); ++i) {
        EXPECT_EQ(again.faces[i].file, fitted.chosen->faces[i].choice.file);
        EXPECT_EQ(again.faces[i].size, fitted.chosen->faces[i].choice.size);
    }
    const Building building = build_image(again);
    ASSERT_TRUE(building.image);
    EXPECT_EQ(account(again, *building.image).flash.total, fitted.chosen->flash);
}

}  // namespace
}  // namespace dialplate

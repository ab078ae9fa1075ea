#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A sample whose parts were written by the author: each has a place.
struct Written {
    sample::Sample s;
    Written() {
        s.layout.faces[0].pointer = "/faces/words";
        s.layout.looks[0].pointer = "/looks/plain";
        s.layout.values[0].pointer = "/values/lock";
        s.layout.paints[0].pointer = "/paints/black";
        s.layout.paints[1].pointer = "/paints/white";
    }
    std::vector<std::string> pointers() const {
        std::vector<std::string> all;
        for (const Finding& finding : s.found("unused")) {
            EXPECT_EQ(finding.severity, Severity::note);
            all.push_back(finding.pointer);
        }
        return all;
    }
};

}  // namespace

TEST(Unused, NamesWhatNoItemRefersTo) {
    Written w;
    EXPECT_THAT(w.pointers(),
                ::testing::UnorderedElementsAre("/faces/words", "/looks/plain", "/values/lock"));
    w.s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    EXPECT_THAT(w.pointers(), ::testing::IsEmpty());
}

TEST(Unused, TakesAPaintForUsedThatOnlyAnOptionalPartHas) {
    Written w;
    w.s.add_key({.x = 0, .y = 0, .width = 60, .height = 60});
    const PaintId red = w.s.paint("red", 0xFF0000);
    w.s.layout.paints.back().pointer = "/paints/red";
    Meter& meter = w.s.add(ItemKind::meter, {.x = 0, .y = 100, .width = 100, .height = 20}).meter;
    meter.to = 10;
    meter.ink = w.s.white;
    meter.over = red;
    meter.over_from = 11;
    meter.peak_ink = red;
    EXPECT_THAT(w.pointers(), ::testing::ElementsAre("/paints/red")) << "never over, no peak";
    meter.over_from = 10;
    EXPECT_THAT(w.pointers(), ::testing::IsEmpty());
}

TEST(Unused, DoesNotSpeakOfWhatTheAuthorDidNotWrite) {
    sample::Sample s;
    EXPECT_TRUE(s.found("unused").empty());
}

}  // namespace dialplate

#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// A face 17 px high at 500 mm, 21': conditions are good.
Sample spaced(int gap, int stroke = 1) {
    Sample s;
    sample::begin_face(s, 17);
    sample::draw_h(s, {.width = 12, .height = 17, .stroke = stroke, .blank_right = gap});
    return s;
}

void show(Sample& s, const std::string& text, int height = 0) {
    Item& item = s.add_legend({.x = 0, .y = 0, .width = 200, .height = 100}, s.white, s.black);
    item.legend.text = text;
    TextExtent extent;
    extent.what = text;
    extent.face = Sample::words;
    extent.height = height;
    s.image.texts_shown.push_back(extent);
}

}  // namespace

TEST(CharacterSpacing, AsksForAShareOfTheHeight) {
    // LEG-18 (read): h = 17 px: 1.7 to 11.05 px.
    EXPECT_TRUE(spaced(2).found("character-spacing").empty());
    const Finding narrow = sample::only(spaced(1).found("character-spacing"));
    EXPECT_EQ(narrow.severity, Severity::should);
    EXPECT_NEAR(*narrow.required, 1.7, 1e-9);
    EXPECT_THAT(narrow.message, ::testing::HasSubstr("2 px"));
    EXPECT_TRUE(spaced(11).found("character-spacing").empty());
    EXPECT_NEAR(*sample::only(spaced(12).found("character-spacing")).required, 11.05, 1e-9);
}

TEST(CharacterSpacing, AsksForAQuarterOfTheHeightInPoorConditions) {
    // LEG-18 (read): poor: >= 4.25 px of 17 px; more than 35 degrees off the normal is poor.
    Sample s = spaced(4);
    s.layout.viewing.tilt = Degrees{35};
    EXPECT_TRUE(s.found("character-spacing").empty());
    s.layout.viewing.tilt = Degrees{36};
    const Finding finding = sample::only(s.found("character-spacing"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_NEAR(*finding.required, 4.25, 1e-9);
    Sample wide = spaced(5);
    wide.layout.viewing.tilt = Degrees{36};
    EXPECT_TRUE(wide.found("character-spacing").empty());

    Sample far = spaced(4);
    far.layout.viewing.distance = Millimetres{701};  // 17 px of 0.18 mm: 15.007'
    EXPECT_TRUE(far.found("character-spacing").empty());
    far.layout.viewing.distance = Millimetres{702};  // 14.985'
    EXPECT_EQ(sample::only(far.found("character-spacing")).severity, Severity::note);
}

TEST(CharacterSpacing, KeepsLabelsAStrokeApart) {
    // LEG-19 (read): stroke 3: gap 3.
    Sample s = spaced(2, 3);
    EXPECT_TRUE(s.found("character-spacing").empty()) << "digits alone are no label";
    show(s, "HH");
    EXPECT_EQ(sample::only(s.found("character-spacing")).required, 3);
    Sample fine = spaced(3, 3);
    show(fine, "HH");
    EXPECT_TRUE(fine.found("character-spacing").empty());
}

TEST(CharacterSpacing, KeepsWordsACharacterApart) {
    // LEG-19 (read): width 12: 12 px between words.
    for (const int blank : {9, 10}) {
        Sample s = spaced(2);
        sample::draw(s, U' ', {std::string(static_cast<std::size_t>(blank), '.')});
        show(s, "H H");
        EXPECT_EQ(s.found("character-spacing").empty(), blank == 10) << blank + 2 << " px";
    }
}

TEST(CharacterSpacing, KeepsLinesHalfAHeightApart) {
    // LEG-19 (read): height 17: 8.5 px between lines. Cells of 20 rows, a pitch of 25 or 26.
    for (const int pitch : {25, 26}) {
        Sample s = spaced(2);
        FaceCost cost;
        cost.face = Sample::words;
        cost.height = 20;
        s.image.faces = {cost};
        show(s, "H\nH", 20 + pitch);
        EXPECT_EQ(s.found("character-spacing").empty(), pitch == 26) << pitch - 17 << " px";
    }
}

}  // namespace dialplate

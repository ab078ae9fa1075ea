#include "tests/check/drawn_face.hpp"

namespace dialplate {

using sample::Sample;

namespace {

/// A face 17 px high at 500 mm, 21', and 0.88 as wide: conditions are good.
Sample spaced(int gap, int stroke = 1, int width = 15) {
    Sample s;
    sample::begin_face(s, 17);
    sample::draw_h(s, {.width = width, .height = 17, .stroke = stroke, .blank_right = gap});
    return s;
}

void show(Sample& s, const std::string& text, int pitch = 0) {
    Item& item = s.add_legend({.x = 0, .y = 0, .width = 200, .height = 100}, s.white, s.black);
    item.legend.text = text;
    TextExtent extent;
    extent.what = text;
    extent.face = Sample::words;
    extent.pitch = pitch;
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

TEST(CharacterSpacing, TakesNarrowCharactersForPoorConditions) {
    // LEG-18 (read): width below 85 % of the height. 15 of 17 px is 0.88; 16 px are 0.84 of 19.
    for (const int height : {17, 19}) {
        Sample s;
        sample::begin_face(s, height);
        sample::draw_h(s, {.width = height == 17 ? 15 : 16, .height = height, .blank_right = 3});
        const auto found = s.found("character-spacing");
        ASSERT_EQ(found.size(), height == 19 ? 1u : 0u);
        if (found.empty()) continue;
        EXPECT_EQ(found[0].severity, Severity::note);
        EXPECT_NEAR(*found[0].required, 4.75, 1e-9);
        EXPECT_EQ(found[0].pointer, "/faces");
        EXPECT_THAT(
            found[0].message,
            ::testing::HasSubstr("0.84 as wide as high, has 3 px of 5, \"spacing\": 2 gives them"));
    }
}

TEST(CharacterSpacing, TakesLowContrastForPoorConditions) {
    // LEG-18 (read): contrast under 88 %. In the dark, with 250 cd/m2 and 500:1 where a part says nothing, black has
    // 0.5: a grey has the modulation (L - 0.5) / (L + 0.5), L = 0.5 + 249.5 Y. As RGB565 holds them, sRGB (49, 48, 49)
    // has Y = 0.02989 and 0.882, (41, 44, 41) has 0.02433 and 0.859.
    for (const std::uint32_t grey : {0x313031u, 0x292C29u}) {
        Sample s = spaced(3);
        s.layout.viewing.light = Lux{0.0};
        const PaintId ink = s.paint("grey", grey);
        Item& item = s.add_legend({.x = 0, .y = 0, .width = 200, .height = 40}, ink, s.black);
        item.legend.text = "17";
        const auto found = s.found("character-spacing");
        ASSERT_EQ(found.size(), grey == 0x292C29u ? 1u : 0u) << std::hex << grey;
        if (!found.empty()) {
            EXPECT_THAT(found[0].message, ::testing::HasSubstr("of modulation 0.859"));
        }
    }
}

TEST(CharacterSpacing, OffersTheMemberThatWidensAGap) {
    Sample s = spaced(1);
    s.layout.faces[0].scale = 1;
    const Finding finding = sample::only(s.found("character-spacing"));
    EXPECT_THAT(finding.message, ::testing::HasSubstr("\"spacing\": 1 gives"));
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/faces/words/spacing");
    EXPECT_EQ(finding.cure[0].value, "1");
    EXPECT_EQ(finding.cure[0].kind, Change::Kind::add);
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
    // LEG-19 (read): width 15: 15 px between words.
    for (const int blank : {12, 13}) {
        Sample s = spaced(2);
        sample::draw(s, U' ', {std::string(static_cast<std::size_t>(blank), '.')});
        show(s, "H H");
        EXPECT_EQ(s.found("character-spacing").empty(), blank == 13) << blank + 2 << " px";
    }
}

TEST(CharacterSpacing, KeepsLinesHalfAHeightApart) {
    // LEG-19 (read): height 17: 8.5 px between lines, a pitch of 25.5.
    for (const int pitch : {25, 26}) {
        Sample s = spaced(2);
        show(s, "H\nH", pitch);
        const auto found = s.found("character-spacing");
        EXPECT_EQ(found.empty(), pitch == 26) << pitch - 17 << " px";
        if (!found.empty()) {
            EXPECT_THAT(found[0].message, ::testing::HasSubstr("1 px taller"));
        }
    }
}

}  // namespace dialplate

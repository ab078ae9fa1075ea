#include "sim/check/letterforms.hpp"

#include "tests/check/drawn_face.hpp"

namespace dialplate {
namespace {

using sample::Sample;

Letterforms forms_of(const Sample& s) {
    return letterforms_of(s.layout, s.image, Sample::words);
}

// Digits of a face with 3 x 5 dots and one with 5 x 7, as anybody would draw them.
const std::vector<std::string> small_three{"###", "..#", "###", "..#", "###"};
const std::vector<std::string> small_eight{"###", "#.#", "###", "#.#", "###"};
const std::vector<std::string> small_zero{"###", "#.#", "#.#", "#.#", "###"};

}  // namespace

TEST(Letterforms, MeasuresInkAndNotCells) {
    Sample s;
    sample::begin_face(s, 7);
    sample::draw_h(s, {.width = 5, .height = 7, .stroke = 1, .blank_left = 1, .blank_right = 2});
    const Letterforms forms = forms_of(s);
    EXPECT_EQ(forms.capital, 7);
    EXPECT_EQ(forms.width, 5);
    EXPECT_EQ(forms.stroke, 1);
    EXPECT_EQ(forms.gap, 3) << "2 px behind a character and 1 px before the next";
    EXPECT_EQ(forms.word_gap, std::nullopt) << "the face has no blank";
    EXPECT_FALSE(forms.small_letters);
}

TEST(Letterforms, CountsEnlargement) {
    Sample s;
    sample::begin_face(s, 21);
    s.layout.faces[0].scale = 3;
    sample::draw_h(s, {.width = 5, .height = 7, .stroke = 1, .blank_left = 0, .blank_right = 1});
    sample::draw(s, U' ', {"...."});
    const Letterforms forms = forms_of(s);
    EXPECT_EQ(forms.width, 15);
    EXPECT_EQ(forms.stroke, 3);
    EXPECT_EQ(forms.gap, 3);
    EXPECT_EQ(forms.word_gap, 15) << "4 px of blank enlarged, and the gap that every character has";
}

TEST(Letterforms, TakesTheMedianWidthWithoutIAndOne) {
    Sample s;
    sample::begin_face(s, 7);
    sample::draw_h(s, {.width = 4, .height = 7}, U'E');
    sample::draw_h(s, {.width = 6, .height = 7}, U'N');
    sample::draw_h(s, {.width = 5, .height = 7}, U'H');
    sample::draw(s, U'I', {"#"});
    sample::draw(s, U'1', {"#"});
    EXPECT_EQ(forms_of(s).width, 5);
}

TEST(Letterforms, KnowsSegmentDigitsFromTheirGeometry) {
    Sample s;
    Face& face = s.layout.faces[0];
    face.kind = FaceKind::segment;
    face.segment_width = 22;
    face.segment_height = 40;
    face.segment_stroke = 5;
    face.segment_gap = 6;
    const Letterforms forms = forms_of(s);
    EXPECT_EQ(forms.capital, 40);
    EXPECT_EQ(forms.width, 22);
    EXPECT_EQ(forms.stroke, 5);
    EXPECT_EQ(forms.gap, 6);
    const auto pairs = hard_pairs(s.layout, s.image, Sample::words);
    ASSERT_EQ(pairs.size(), 5u) << "segments have no B";
    EXPECT_EQ(pairs.front().detail, 5);
}

TEST(Letterforms, CountsAToneFromHalfOfFullOnAsInk) {
    Sample s;
    sample::begin_face(s, 5);
    s.layout.faces[0].smooth = true;
    Glyph glyph;
    glyph.code = U'H';
    glyph.cell = {.width = 4, .height = 1, .pixels = {1, 3, 2, 1}};
    s.image.rasters[0].glyphs = {glyph};
    EXPECT_EQ(forms_of(s).width, 2);
    EXPECT_EQ(forms_of(s).gap, 2);
}

TEST(Letterforms, FindsTheGreatestThingThatTellsTwoDigitsApart) {
    Sample s;
    sample::begin_face(s, 5);
    sample::draw(s, U'3', small_three);
    sample::draw(s, U'8', small_eight);
    sample::draw(s, U'0', small_zero);
    const auto pairs = hard_pairs(s.layout, s.image, Sample::words);
    ASSERT_EQ(pairs.size(), 2u) << "0/8 and 3/8; the others are not drawn";
    EXPECT_EQ(pairs[0].detail, 1) << "single dots in this face";

    // Each dot made of 2 x 2: the bar of the 8 that the 0 lacks is 2 px thick.
    s.layout.faces[0].scale = 2;
    EXPECT_EQ(hard_pairs(s.layout, s.image, Sample::words)[0].detail, 2);
}

TEST(Letterforms, LaysTwoCharactersOverEachOtherWhereTheyDifferLeast) {
    Sample s;
    sample::begin_face(s, 5);
    // The same shape, one pixel further right in its cell: no difference to an eye.
    sample::draw(s, U'3', {"###.", "..#.", "###.", "..#.", "###."});
    sample::draw(s, U'8', {".###", "...#", ".###", "...#", ".###"});
    const auto pairs = hard_pairs(s.layout, s.image, Sample::words);
    ASSERT_EQ(pairs.size(), 1u);
    EXPECT_EQ(pairs[0].pair, "3/8");
    EXPECT_EQ(pairs[0].detail, 0);
}

TEST(Letterforms, SaysNothingOfAFaceWithoutGlyphs) {
    Sample s;
    s.image.rasters.clear();
    EXPECT_EQ(forms_of(s).width, std::nullopt);
    EXPECT_TRUE(hard_pairs(s.layout, s.image, Sample::words).empty());
}

}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

sample::Sample with_capitals(int pixels) {
    sample::Sample s;
    s.add_legend({.x = 0, .y = 0, .width = 100, .height = 60}, s.white, s.black);
    s.image.measures[0].capital = pixels;
    return s;
}

}  // namespace

TEST(CharacterHeight, JudgesCapitalsToThePixel) {
    struct Row {
        double distance_mm;
        int pixels;
        std::optional<Severity> severity;
        const char* source;
    };
    const Row rows[] = {
        {500, 17, std::nullopt, "LEG-10: 17 px reach 20' at 500 mm"},
        {500, 16, Severity::should, "LEG-06: 16' to 20'"},
        {500, 13, Severity::should, "LEG-10: 13 px reach 16'"},
        {500, 12, Severity::must, "LEG-05: under 16'"},
        {500, 7, Severity::must, "LEG-11: capital of a 5x7 face, 8.663'"},
        {700, 23, std::nullopt, "LEG-10: 23 px reach 20' at 700 mm"},
        {700, 22, Severity::should, "LEG-10"},
        {700, 19, Severity::should, "LEG-10: 19 px reach 16'"},
        {700, 18, Severity::must, "LEG-10"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        sample::Sample s = with_capitals(row.pixels);
        s.layout.viewing.distance = Millimetres{row.distance_mm};
        const auto found = s.found("character-height");
        if (!row.severity) {
            EXPECT_TRUE(found.empty());
            continue;
        }
        const Finding finding = sample::only(found);
        EXPECT_EQ(finding.severity, *row.severity);
        EXPECT_EQ(finding.required, *row.severity == Severity::must ? 16 : 20);
    }
}

TEST(CharacterHeight, SaysTheAngleAndThePixelsThatReachIt) {
    const Finding finding = sample::only(with_capitals(7).found("character-height"));
    EXPECT_NEAR(*finding.measured, 8.663, 0.001) << "LEG-11";
    EXPECT_EQ(finding.unit, "arcmin");
    EXPECT_THAT(finding.message, ::testing::HasSubstr("13 px reach it"));
}

TEST(CharacterHeight, NotesTextThatIsTooLarge) {
    // At 500 mm 45' are 36.36 px and 24' are 19.39 px (LEG-01, LEG-07).
    EXPECT_TRUE(with_capitals(36).found("character-height").empty());
    const Finding group = sample::only(with_capitals(37).found("character-height"));
    EXPECT_EQ(group.severity, Severity::note);
    EXPECT_EQ(group.required, 45);

    sample::Sample lines = with_capitals(19);
    lines.layout.pages[0].items[0].legend.text = "TWO\nLINES";
    EXPECT_TRUE(lines.found("character-height").empty());
    lines.image.measures[0].capital = 20;
    EXPECT_EQ(sample::only(lines.found("character-height")).required, 24);
}

TEST(CharacterHeight, LetsASingleCharacterBeLarge) {
    sample::Sample s = with_capitals(37);
    EXPECT_EQ(s.found("character-height").size(), 1u);
    for (const char* one : {":", "\u25C4"}) {
        s.layout.pages[0].items[0].legend.text = one;
        EXPECT_TRUE(s.found("character-height").empty()) << "LEG-07 speaks of groups";
    }
}

TEST(CharacterHeight, LetsTheMainReadoutBeLarge) {
    sample::Sample s = with_capitals(60);
    Item& item = s.layout.pages[0].items[0];
    item.kind = ItemKind::readout;
    item.readout.face = sample::Sample::words;
    item.readout.ink = s.white;
    item.readout.ground = s.black;
    EXPECT_TRUE(s.found("character-height").empty()) << "LEG-07";
}

TEST(CharacterHeight, ForeshortensWithTheTilt) {
    // By hand: 13 px x cos 45 degrees are 9.19 px, 11.4'; 16' need 12.93 px / 0.7071 = 18.3, so 19.
    sample::Sample s = with_capitals(18);
    s.layout.viewing.tilt = Degrees{45.0};
    const Finding finding = sample::only(s.found("character-height"));
    EXPECT_EQ(finding.severity, Severity::must);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("19 px reach it"));
    s.image.measures[0].capital = 19;
    EXPECT_EQ(sample::only(s.found("character-height")).severity, Severity::should);
}

TEST(CharacterHeight, SaysNothingOfAFaceWithoutCapitalsOrDigits) {
    sample::Sample s = with_capitals(7);
    s.image.measures[0].capital.reset();
    EXPECT_TRUE(s.found("character-height").empty());
}

}  // namespace dialplate

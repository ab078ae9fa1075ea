// What contrast rules offer: another colour for a paint where nothing loses by that, else another paint.
#include "sim/check/paint_cures.hpp"

#include "sim/check/contrast.hpp"
#include "tests/check/sample.hpp"

namespace dialplate {

using sample::Sample;
using ::testing::HasSubstr;

namespace {

constexpr std::uint32_t grey =
    0x606060;  // as RGB565 holds it 3.4:1 on black, 6.1:1 on white (CON-04)
const Box there{.x = 10, .y = 100, .width = 100, .height = 30};

Finding contrast_of(const Sample& s) {
    return sample::only(s.found("text-contrast"));
}

}  // namespace

TEST(PaintCures, GiveThePaintAnotherColourWhereNothingLoses) {
    Sample s;
    s.add_legend(there, s.paint("faint", grey), s.black);
    const Finding finding = contrast_of(s);
    ASSERT_EQ(finding.cure.size(), 1u);
    EXPECT_EQ(finding.cure[0].pointer, "/paints/faint");
    EXPECT_EQ(finding.cure[0].kind, Change::Kind::replace);
    // The colour offered stands in the sentence too, and reaches 4.5:1 as the display holds it.
    const std::string colour = finding.cure[0].value.substr(1, 7);
    EXPECT_THAT(finding.message, HasSubstr("ink " + colour + " reaches it"));
    const auto rgb = static_cast<std::uint32_t>(std::stoul(colour.substr(1), nullptr, 16));
    EXPECT_GE(contrast_on_glass(pack_rgb565(rgb), pack_rgb565(0x000000)), 4.5);
}

TEST(PaintCures, LetOtherItemsGainToo) {
    Sample s;
    const PaintId faint = s.paint("faint", grey);
    s.add_legend(there, faint, s.black);
    s.add_legend({.x = 10, .y = 200, .width = 100, .height = 30}, faint, s.black);
    const auto found = s.found("text-contrast");
    ASSERT_EQ(found.size(), 2u);
    for (const Finding& finding : found)
        EXPECT_EQ(finding.cure.size(), 1u) << "both are on black";
}

TEST(PaintCures, NameAnotherPaintWhereOneWouldLose) {
    Sample s;
    const PaintId faint = s.paint("faint", grey);
    s.add_legend(there, faint, s.black);
    s.add_legend({.x = 10, .y = 200, .width = 100, .height = 30}, faint, s.white);
    const Finding finding = contrast_of(s);
    EXPECT_TRUE(finding.cure.empty());
    EXPECT_THAT(finding.message, HasSubstr("paint \"faint\" is used elsewhere too"));
    EXPECT_THAT(finding.message, HasSubstr("paint \"white\" has 21.00:1"));  // CON-T1
}

TEST(PaintCures, ChangeThePaletteInWhichItIsFaint) {
    Sample s;
    s.layout.palettes = {"main", "dim"};
    const PaintId ink = s.paint("ink", 0xC0C0C0);
    for (Paint& paint : s.layout.paints)
        paint.others = {paint.rgb565};
    s.layout.paints[static_cast<std::size_t>(ink)].others = {pack_rgb565(grey)};
    s.add_legend(there, ink, s.black);
    EXPECT_EQ(contrast_of(s).cure.at(0).pointer, "/palettes/dim/ink");
    EXPECT_EQ(contrast_of(s).cure.at(0).kind, Change::Kind::add) << "the palette does not have it";
    s.layout.places["/palettes/dim/ink"] = {.line = 3, .column = 5};
    EXPECT_EQ(contrast_of(s).cure.at(0).kind, Change::Kind::replace);
}

TEST(PaintCures, LookAtPalettesThatInheritTheColour) {
    // In "day" the ground is white and the ink is that of the first palette: lighter ink would vanish there.
    Sample s;
    s.layout.palettes = {"main", "day"};
    const PaintId ink = s.paint("ink", grey), ground = s.paint("ground", 0x000000);
    for (Paint& paint : s.layout.paints)
        paint.others = {paint.rgb565};
    s.layout.paints[static_cast<std::size_t>(ground)].others = {pack_rgb565(0xFFFFFF)};
    s.layout.places["/palettes/day/ground"] = {.line = 3, .column = 5};
    s.add_legend(there, ink, ground);
    EXPECT_TRUE(contrast_of(s).cure.empty());
    // With an ink of its own there, the first may change.
    s.layout.places["/palettes/day/ink"] = {.line = 4, .column = 5};
    EXPECT_EQ(contrast_of(s).cure.size(), 1u);
}

}  // namespace dialplate

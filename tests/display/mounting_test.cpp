#include "sim/display/mounting.hpp"

#include "tests/display/display_fixture.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace dialplate {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(TurnMistakes, AcceptsTheModesOfOnePieceOfGlass) {
    EXPECT_THAT(turn_mistakes(turned_display(240, 320)), IsEmpty());
}

TEST(TurnMistakes, NamesAMirroredTurn) {
    Display display = turned_display(240, 320);
    display.turns[2].address_mode = 0xC8;
    EXPECT_THAT(turn_mistakes(display), ElementsAre(HasSubstr("turn 180")));
}

TEST(TurnMistakes, NamesTurnsThatAreExchanged) {
    Display display = turned_display(240, 320);
    std::swap(display.turns[1], display.turns[3]);
    EXPECT_THAT(turn_mistakes(display), ElementsAre(HasSubstr("turn 90"), HasSubstr("turn 270")));
}

TEST(TurnMistakes, NamesAForgottenOffset) {
    Display display = turned_display(240, 240);
    display.memory_height = 320;
    display.turns[2].page_offset = 80;
    EXPECT_THAT(turn_mistakes(display), ElementsAre(HasSubstr("turn 270")));
    display.turns[3].column_offset = 80;
    EXPECT_THAT(turn_mistakes(display), IsEmpty());
}

TEST(TurnMistakes, NamesGlassThatReachesOutsideTheMemory) {
    Display display = turned_display(240, 320);
    for (TurnMode& mode : display.turns)
        mode.column_offset = 1;
    EXPECT_THAT(turn_mistakes(display), testing::Contains(HasSubstr("outside")));
    display = turned_display(240, 320);
    display.memory_width = 128;
    EXPECT_THAT(turn_mistakes(display), testing::Contains(HasSubstr("outside")));
}

TEST(TurnMistakes, NamesAnotherColourOrder) {
    Display display = turned_display(240, 320);
    display.turns[1].address_mode = 0x20;
    EXPECT_THAT(turn_mistakes(display),
                ElementsAre(testing::AllOf(HasSubstr("turn 90"), HasSubstr("BGR"))));
}

}  // namespace
}  // namespace dialplate

#include "tests/check/sample.hpp"

namespace dialplate {
namespace {

/// A value of three choices that a key steps through.
struct WithBand {
    sample::Sample s;
    ValueId band = 0;
    WithBand() {
        Value value;
        value.name = "band";
        value.type = ValueType::choice;
        value.max = 2;
        value.pointer = "/values/band";
        for (const char* text : {"80 m", "40 m", "20 m"}) {
            Choice choice;
            choice.text = text;
            value.choices.push_back(choice);
        }
        s.layout.values.push_back(value);
        band = static_cast<ValueId>(s.layout.values.size() - 1);
        Action& tap = s.add_key({.x = 0, .y = 0, .width = 60, .height = 60}).key.tap;
        tap.kind = ActionKind::step;
        tap.value = band;
        tap.amount = 1;
        tap.around = true;
    }
    void add_lamp(std::optional<std::int32_t> when) {
        s.add(ItemKind::lamp, {.x = 100, .y = 0, .width = 60, .height = 30}).lamp = {
            .value = band,
            .when = when,
            .text = "BAND",
            .lit = {.ink = s.black, .fill = s.white, .edge = s.white},
            .unlit = {.ink = s.white, .fill = s.black, .edge = s.black}};
    }
};

}  // namespace

TEST(UnseenChoice, TellsAValueThatAKeySetsAndNothingShows) {
    WithBand with;
    const Finding finding = sample::only(with.s.found("unseen-choice"));
    EXPECT_EQ(finding.severity, Severity::should);
    EXPECT_EQ(finding.pointer, "/values/band");
    with.add_lamp(std::nullopt);
    EXPECT_TRUE(with.s.found("unseen-choice").empty());
}

TEST(UnseenChoice, NotesTheChoicesThatAreForgotten) {
    WithBand with;
    with.add_lamp(0);
    const Finding finding = sample::only(with.s.found("unseen-choice"));
    EXPECT_EQ(finding.severity, Severity::note);
    EXPECT_EQ(finding.measured, 1);
    EXPECT_EQ(finding.required, 3);
    EXPECT_THAT(finding.message, ::testing::HasSubstr("\"40 m\", \"20 m\""));
    with.add_lamp(1);
    with.add_lamp(2);
    EXPECT_TRUE(with.s.found("unseen-choice").empty());
}

TEST(UnseenChoice, TakesAnActiveKeyForAShowing) {
    WithBand with;
    Key& key = with.s.layout.pages[0].items[0].key;
    key.active_value = with.band;
    key.active_at = 2;
    EXPECT_THAT(sample::only(with.s.found("unseen-choice")).message,
                ::testing::HasSubstr("\"80 m\", \"40 m\""));
}

}  // namespace dialplate

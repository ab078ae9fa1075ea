#include "sim/prototype/play.hpp"

#include "sim/layout/reader.hpp"
#include "sim/prototype/assignment.hpp"
#include "sim/prototype/prototype.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace dialplate {
namespace {

using testing::HasSubstr;

constexpr const char* receiver = R"({
"title": "Play", "display": "2.8in-ILI9341", "turn": 90,
"mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
"paints": {"ground": "#000000", "ink": "#FFFFFF"}, "palettes": {"dim": {"ink": "#A00000"}},
"looks": {"plain": {"idle": {"ink": "ink", "fill": "ground", "edge": "ink"}}},
"faces": {"legend": {"file": "legend9.bdf", "size": 9}},
"values": {
  "frequency": {"type": "number", "unit": "Hz", "min": 0, "max": 30000000, "start": 7100000, "role": "frequency"},
  "band": {"type": "choice", "choices": [{"text": "40 m"}, {"text": "80 m"}], "start": "40 m"},
  "lock": {"type": "flag", "start": false}},
"pages": [
  {"name": "main", "ground": "ground", "items": [
    {"kind": "key", "name": "eighty", "at": [0, 0], "size": [80, 60], "text": "80 m", "face": "legend",
     "look": "plain", "tap": {"set": "band", "to": "80 m"}}]},
  {"name": "bands", "ground": "ground", "items": [
    {"kind": "key", "name": "back", "at": [100, 100], "size": [80, 60], "text": "back", "face": "legend",
     "look": "plain", "tap": {"page": "main"}}]}]
})";

Layout layout() {
    Reading reading = read_layout(receiver, "receiver.json", DIALPLATE_TREE "/layouts");
    for (const Finding& finding : reading.findings) {
        ADD_FAILURE() << gnu_line("receiver.json", finding);
    }
    return reading.layout.value();
}

TEST(Play, ReadsEveryKindOfStepInOrder) {
    const PlayReading play = read_play(R"({"$schema": "play.schema.json", "steps": [
        {"tap": "eighty"}, {"press": "eighty"}, {"press_at": [319, 239]}, {"lift": true}, {"turn": -5},
        {"wait_ms": 500}, {"set": {"band": "80 m", "lock": true, "frequency": 7000000}}, {"page": "bands"},
        {"palette": "dim"}]})",
                                       layout());
    ASSERT_TRUE(play.steps.has_value());
    std::vector<StepKind> kinds;
    for (const PlayStep& step : *play.steps) {
        kinds.push_back(step.kind);
    }
    EXPECT_THAT(kinds,
                testing::ElementsAre(StepKind::tap,
                                     StepKind::press,
                                     StepKind::press_at,
                                     StepKind::lift,
                                     StepKind::turn,
                                     StepKind::wait,
                                     StepKind::set,
                                     StepKind::set,
                                     StepKind::set,
                                     StepKind::page,
                                     StepKind::palette));
    EXPECT_EQ(play.steps->at(0).item, "eighty");
    EXPECT_EQ(play.steps->at(2).x, 319);
    EXPECT_EQ(play.steps->at(2).y, 239);
    EXPECT_EQ(play.steps->at(4).amount, -5);
    EXPECT_EQ(play.steps->at(5).amount, 500);
    EXPECT_EQ(play.steps->at(6).to, 1);
    EXPECT_EQ(play.steps->at(8).to, 7000000);
    EXPECT_EQ(play.steps->at(9).index, 1);
    EXPECT_EQ(play.steps->at(10).index, 1);
}

TEST(Play, SaysWhereAndWhatIsWrong) {
    struct Row {
        const char* text;
        int line, column;
        const char* says;
    };
    const Row rows[] = {
        {"[]", 1, 1, "a play is an object with \"steps\", found a list"},
        {"{}", 1, 1, "needs the member \"steps\""},
        {"{\"stpes\": []}", 1, 2, "did you mean \"steps\"?"},
        {"{\"steps\": 5}", 1, 11, "is a list of steps, found 5"},
        {"{\"steps\": [5]}", 1, 12, "a step is an object, found 5"},
        {"{\"steps\": [\n  {\"tpa\": \"eighty\"}]}", 2, 4, "did you mean \"tap\"?"},
        {"{\"steps\": [{}]}", 1, 12, "exactly one member, found 0"},
        {"{\"steps\": [{\"turn\": 1, \"lift\": true}]}", 1, 12, "exactly one member, found 2"},
        {"{\"steps\": [{\"tap\": \"eigthy\"}]}", 1, 20, "did you mean \"eighty\"?"},
        {"{\"steps\": [{\"tap\": 4}]}", 1, 20, "a name is a text, found 4"},
        {"{\"steps\": [{\"page\": \"band\"}]}", 1, 21, "did you mean \"bands\"?"},
        {"{\"steps\": [{\"palette\": \"night\"}]}", 1, 24, "there is no palette \"night\""},
        {"{\"steps\": [{\"press_at\": [320, 0]}]}", 1, 26, "0 to 319, found 320"},
        {"{\"steps\": [{\"press_at\": [1, 2, 3]}]}", 1, 25, "a list of x and y in pixels"},
        {"{\"steps\": [{\"lift\": false}]}", 1, 21, "\"lift\" is true, found false"},
        {"{\"steps\": [{\"turn\": 1.5}]}", 1, 21, "is a whole number"},
        {"{\"steps\": [{\"wait_ms\": -1}]}", 1, 24, "0 to 600000, found -1"},
        {"{\"steps\": [{\"set\": {\"bnad\": \"40 m\"}}]}", 1, 21, "did you mean \"band\"?"},
        {"{\"steps\": [{\"set\": {\"band\": \"40m\"}}]}", 1, 29, "did you mean \"40 m\"?"},
        {"{\"steps\": [{\"set\": {\"band\": 1}}]}", 1, 29, "takes the text of a choice, found 1"},
        {"{\"steps\": [{\"set\": {\"lock\": 1}}]}", 1, 29, "takes true or false, found 1"},
        {"{\"steps\": [{\"set\": {\"frequency\": 30000001}}]}",
         1,
         34,
         "goes from 0 to 30000000 Hz"},
        {"{\"steps\": [{\"set\": {\"frequency\": \"7100000\"}}]}", 1, 34, "takes a whole number"},
        {"{\"steps\": [{\"turn\": 1}", 1, 23, ""},
        {"", 1, 1, "empty"},
    };
    const Layout known = layout();
    for (const Row& row : rows) {
        SCOPED_TRACE(row.text);
        const PlayReading play = read_play(row.text, known);
        EXPECT_FALSE(play.steps.has_value());
        ASSERT_FALSE(play.findings.empty());
        const Finding& first = play.findings.front();
        EXPECT_EQ(first.place.line, row.line);
        EXPECT_EQ(first.place.column, row.column);
        EXPECT_THAT(first.message, HasSubstr(row.says));
        EXPECT_EQ(first.severity, Severity::error);
    }
}

TEST(Play, ReportsAllMistakesSortedByPlace) {
    const PlayReading play = read_play(
        "{\"steps\": [\n{\"turn\": true},\n{\"page\": \"x\"},\n{\"lfit\": true}]}", layout());
    ASSERT_EQ(play.findings.size(), 3U);
    EXPECT_EQ(play.findings[0].place.line, 2);
    EXPECT_EQ(play.findings[1].place.line, 3);
    EXPECT_EQ(play.findings[2].place.line, 4);
}

TEST(Play, CutAfterAnyByteIsALocatedMistake) {
    const std::string whole =
        R"({"steps": [{"tap": "eighty"}, {"press_at": [1, 2]}, {"set": {"lock": true}}]})";
    const Layout known = layout();
    ASSERT_TRUE(read_play(whole, known).steps.has_value());
    for (std::size_t length = 0; length < whole.size(); ++length) {
        SCOPED_TRACE(length);
        const PlayReading play = read_play(whole.substr(0, length), known);
        EXPECT_FALSE(play.steps.has_value());
        EXPECT_FALSE(play.findings.empty());
    }
}

TEST(Assignment, TakesChoicesByTextFlagsByTrueAndFalseAndWholeNumbers) {
    struct Row {
        const char* written;
        std::int32_t to;
        const char* says;
    };
    const Row rows[] = {
        {"band=80 m", 1, ""},
        {"lock=true", 1, ""},
        {"lock=false", 0, ""},
        {"frequency=7030000", 7030000, ""},
        {"frequency=0", 0, ""},
        {"frequency=-1", 0, "goes from 0 to 30000000 Hz, found -1"},
        {"frequency=99999999999999999999", 0, "goes from 0 to 30000000 Hz"},
        {"frequency=7 MHz", 0, "takes a whole number"},
        {"frequency=", 0, "takes a whole number"},
        {"freqency=1", 0, "did you mean \"frequency\"?"},
        {"band=20 m", 0, "there is no choice of \"band\" \"20 m\""},
        {"lock=on", 0, "takes true or false, found \"on\""},
        {"lock", 0, "name=value"},
    };
    const Layout known = layout();
    for (const Row& row : rows) {
        SCOPED_TRACE(row.written);
        const Meant<Assignment> meant = assignment(known, row.written);
        if (*row.says == '\0') {
            ASSERT_TRUE(meant.it.has_value()) << meant.why;
            EXPECT_EQ(meant.it->to, row.to);
        } else {
            EXPECT_FALSE(meant.it.has_value());
            EXPECT_THAT(meant.why, HasSubstr(row.says));
        }
    }
}

class Performance : public testing::Test {
protected:
    std::optional<Finding> perform_text(const char* text) {
        const PlayReading play = read_play(text, prototype_.layout());
        return perform(prototype_, play.steps.value());
    }

    Layout layout_ = layout();
    Prototype prototype_{layout_, build_image(layout_).image.value()};
};

TEST_F(Performance, TapsTurnsAndSetsReachTheReceiver) {
    EXPECT_FALSE(perform_text(R"({"steps": [{"tap": "eighty"}, {"set": {"lock": true}}]})"));
    EXPECT_EQ(prototype_.get(1), 1);
    EXPECT_EQ(prototype_.get(2), 1);
}

TEST_F(Performance, AKeyThatIsNotOnThePageShownStopsThePlay) {
    const std::optional<Finding> finding =
        perform_text("{\"steps\": [{\"page\": \"bands\"},\n{\"tap\": \"eighty\"}]}");
    ASSERT_TRUE(finding.has_value());
    EXPECT_EQ(finding->place.line, 2);
    EXPECT_THAT(finding->message, HasSubstr("not on the page shown then, \"bands\""));
}

TEST_F(Performance, ATapThatTurnsThePageIsFollowed) {
    EXPECT_FALSE(
        perform_text(R"({"steps": [{"page": "bands"}, {"tap": "back"}, {"tap": "eighty"}]})"));
    EXPECT_EQ(prototype_.get(1), 1);
}

}  // namespace
}  // namespace dialplate

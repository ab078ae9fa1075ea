#include "sim/edit/naming.hpp"

#include "tests/edit/example.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace dialplate {
namespace {

using Kind = Shape::Kind;

/// A small layout in which everything with a name is used somewhere. The bytes are an author's: uneven.
const std::string document = R"({
  "title": "T", "display": "2.8in-ILI9341",
  "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
  "paints": {"dark":  "#000000", "light": "#FFFFFF" ,
    "warm": "#FF8000"},
  "palettes": {"night": { "light" : "#800000"}},
  "looks": {"key": {"idle": {"ink": "light", "fill": "dark"}}},
  "faces": {"small": {"file": "legend13.bdf", "size": 13}},
  "values": {
    "mode": {"type": "choice", "role": "mode", "choices": ["AM", {"text": "USB"}], "start": "USB"},
    "band": {"type": "choice", "role": "band",
             "choices": [{"text": "40 m", "number": 7000000, "low": 7000000, "high": 7200000,
                          "mode": "USB"}]}},
  "pages": [
    {"name": "main", "ground": "dark", "items": [
      {"kind": "lamp", "name": "U", "at": [0, 0], "size": [60, 24], "value": "mode", "when": "USB",
       "text": "USB", "face": "small", "lit": {"ink": "dark", "fill": "light"}, "unlit": {"ink": "light"}},
      {"kind": "key", "at": [0, 40], "size": [80, 40], "text": "USB", "face": "small", "look": "key",
       "tap": {"set": "mode", "to": "USB"}, "hold": {"page": "more"},
       "active": {"value": "mode", "at": "USB"}}]},
    {"name": "more", "ground": "dark", "items": []}]
}
)";

std::string replaced(std::string text,
                     std::initializer_list<std::pair<const char*, const char*>> pairs) {
    for (const auto& [was, is] : pairs) {
        const std::size_t at = text.find(was);
        EXPECT_NE(at, std::string::npos) << was;
        if (at != std::string::npos) text.replace(at, std::string(was).size(), is);
    }
    return text;
}

Amended rename(Kind kind, const std::string& from, const std::string& to) {
    return renamed(layout_schema(), document, tree(document), {kind, from}, to);
}

TEST(Naming, TheDocumentOfTheseTestsIsALayout) {
    EXPECT_EQ(mistake_in(document), "");
}

TEST(Naming, APaintTakesAllThatSpeakOfItAlongAndNoOtherByte) {
    const Amended result = rename(Kind::paint, "light", "ivory");
    ASSERT_EQ(result.mistake, "");
    // By hand: its own entry, the palette, the look, the lamp twice.
    EXPECT_EQ(*result.text,
              replaced(document,
                       {{"\"light\": \"#FFFFFF\" ,", "\"ivory\": \"#FFFFFF\" ,"},
                        {"{ \"light\" :", "{ \"ivory\" :"},
                        {"\"ink\": \"light\", \"fill\": \"dark\"",
                         "\"ink\": \"ivory\", \"fill\": \"dark\""},
                        {"\"fill\": \"light\"", "\"fill\": \"ivory\""},
                        {"\"unlit\": {\"ink\": \"light\"", "\"unlit\": {\"ink\": \"ivory\""}}));
    EXPECT_EQ(mistake_in(*result.text), "");
}

TEST(Naming, EveryKindCanBeRenamedAndTheLayoutStillReads) {
    struct Row {
        Kind kind;
        const char* name;
        int places;  ///< Counted by hand: the definition and the uses.
    };
    const Row rows[] = {{Kind::paint, "dark", 5},
                        {Kind::look, "key", 2},
                        {Kind::face, "small", 3},
                        {Kind::value, "mode", 4},
                        {Kind::page, "more", 2}};
    for (const Row& row : rows) {
        SCOPED_TRACE(row.name);
        const Amended result = rename(row.kind, row.name, "another");
        ASSERT_EQ(result.mistake, "");
        EXPECT_EQ(mistake_in(*result.text), "");
        int places = 0;
        for (std::size_t at = 0; (at = result.text->find("\"another\"", at)) != std::string::npos;
             ++at)
            ++places;
        EXPECT_EQ(places, row.places);
        // And back: the author's bytes.
        EXPECT_EQ(
            renamed(
                layout_schema(), *result.text, tree(*result.text), {row.kind, "another"}, row.name)
                .text,
            document);
    }
}

TEST(Naming, RefusesANameThatIsTaken) {
    EXPECT_EQ(rename(Kind::paint, "light", "warm").mistake, "there is a paint \"warm\" already");
    EXPECT_EQ(rename(Kind::page, "main", "more").mistake, "there is a page \"more\" already");
}

TEST(Naming, AStateOfAChoiceTakesLampsKeysBandsAndTheStartAlong) {
    const Amended result = renamed_state(
        layout_schema(), document, tree(document), "/values/mode/choices/1/text", "SSB");
    ASSERT_EQ(result.mistake, "");
    EXPECT_EQ(mistake_in(*result.text), "");
    // The words on the lamp and on the key are words, not the state.
    EXPECT_EQ(*result.text,
              replaced(document,
                       {{"{\"text\": \"USB\"}", "{\"text\": \"SSB\"}"},
                        {"\"start\": \"USB\"", "\"start\": \"SSB\""},
                        {"\"mode\": \"USB\"}]", "\"mode\": \"SSB\"}]"},
                        {"\"when\": \"USB\"", "\"when\": \"SSB\""},
                        {"\"to\": \"USB\"", "\"to\": \"SSB\""},
                        {"\"at\": \"USB\"", "\"at\": \"SSB\""}}));
    EXPECT_TRUE(is_state_words(tree(document), "/values/mode/choices/0"));
    EXPECT_FALSE(is_state_words(tree(document), "/values/mode/choices/1"));
    EXPECT_FALSE(is_state_words(tree(document), "/pages/0/items/0/text"));
}

TEST(Naming, KnowsTheStatesThatMayStandAtAPlace) {
    const Node node = tree(document);
    const std::vector<std::string> modes{"\"AM\"", "\"USB\""};
    for (const char* place : {"/pages/0/items/0/when",
                              "/pages/0/items/1/tap/to",
                              "/pages/0/items/1/active/at",
                              "/values/mode/start",
                              "/values/band/choices/0/mode"})
        EXPECT_EQ(states_at(node, place), modes) << place;
    for (const char* place : {"/pages/0/items/0/at", "/pages/0/items/0/text", "/title"})
        EXPECT_TRUE(states_at(node, place).empty()) << place;
}

TEST(Naming, DeletesWhatNobodyUsesAndSaysWhoUsesTheRest) {
    const Node node = tree(document);
    const auto drop = [&](Kind kind, const char* name) {
        return without(layout_schema(), document, node, {kind, name});
    };
    EXPECT_EQ(drop(Kind::paint, "warm").text,
              replaced(document, {{" ,\n    \"warm\": \"#FF8000\"}", "}"}}));
    EXPECT_EQ(drop(Kind::look, "key").mistake,
              "look \"key\" is used by look of key 2 on page \"main\"");
    EXPECT_EQ(drop(Kind::paint, "light").mistake,
              "paint \"light\" is used by idle ink of look \"key\", lit fill of \"U\" on page "
              "\"main\", unlit ink of \"U\" on page \"main\"");
    EXPECT_EQ(drop(Kind::page, "more").mistake,
              "page \"more\" is used by hold page of key 2 on page \"main\"");
    EXPECT_EQ(drop(Kind::value, "mode").mistake,
              "value \"mode\" is used by value of \"U\" on page \"main\", tap set of key 2 on page "
              "\"main\", active value of key 2 on page \"main\"");
}

TEST(Naming, FindsNamesThatAreFree) {
    const Node node = tree(document);
    EXPECT_EQ(free_name(node, Kind::paint, "amber"), "amber");
    EXPECT_EQ(free_name(node, Kind::paint, "dark"), "dark 2");
    EXPECT_EQ(free_name(tree(R"({"paints": {"dark": "", "dark 2": ""}})"), Kind::paint, "dark 2"),
              "dark 3");
}

TEST(Naming, FollowsEveryNameOfTheExamples) {
    for (const char* example :
         {"coast-listener.json", "bench-standard.json", "trail-cw.json", "pocket-broadcast.json"}) {
        SCOPED_TRACE(example);
        const std::string text = layouts_text(example);
        const Node node = tree(text);
        for (const Kind kind : {Kind::paint, Kind::look, Kind::face, Kind::value, Kind::page})
            for (const std::string& name : names_of(node, kind)) {
                SCOPED_TRACE(name);
                const Amended result =
                    renamed(layout_schema(), text, node, {kind, name}, "quite another");
                ASSERT_EQ(result.mistake, "");
                EXPECT_EQ(mistake_in(*result.text), "");
            }
    }
}

}  // namespace
}  // namespace dialplate

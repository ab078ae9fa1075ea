// What rules say of themselves, and the figures that a layout may set for them.
#include "sim/check/rule.hpp"

#include "sim/check/rule_list.hpp"
#include "tests/check/sample.hpp"

#include <set>

namespace dialplate {
namespace {

using ::testing::HasSubstr;

Threshold threshold(const char* rule, const char* figure, double value) {
    return {.rule = rule,
            .figure = figure,
            .value = value,
            .pointer = std::string("/thresholds/") + rule + "/" + figure};
}

}  // namespace

TEST(Rule, TakesItsFiguresFromTheProfile) {
    struct Row {
        const char* profile;
        double least_mm;
        const char* source;
    };
    const Row rows[] = {
        {"", 9.2, "TCH-07, read; the bench is what is meant when nothing is said"},
        {"bench", 9.2, "TCH-07, read"},
        {"mobile", 15.0, "TCH-12, read"},
        {"gloved", 20.0, "TCH-10, read: for bare fingers; no figure for gloves was found"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        Layout layout;
        layout.profile = row.profile;
        EXPECT_EQ(figure(layout, rule::touch_size, "least_mm"), row.least_mm);
    }
}

TEST(Rule, TakesAFigureOfTheLayoutBeforeThatOfTheProfile) {
    Layout layout;
    layout.profile = "gloved";
    layout.thresholds = {threshold("touch-size", "least_series_mm", 11.0),
                         threshold("touch-size", "least_mm", 12.5),
                         threshold("update-time", "least_mm", 1.0)};
    EXPECT_EQ(figure(layout, rule::touch_size, "least_mm"), 12.5);
    EXPECT_EQ(figure(layout, rule::touch_size, "least_series_mm"), 11.0);
    EXPECT_EQ(figure(layout, rule::character_height, "least_arcmin"), 16.0);
}

TEST(Rule, JudgesByTheFigureOfTheLayout) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});  // 10.8 mm both ways
    EXPECT_TRUE(s.found("touch-size").empty());
    s.layout.thresholds = {threshold("touch-size", "least_mm", 10.9)};
    const Finding finding = sample::only(s.found("touch-size"));
    EXPECT_EQ(finding.required, 10.9);
    EXPECT_THAT(finding.message, HasSubstr("make it 61 x 61 px"));
}

TEST(Rule, TellsWhatIsWrongWithTheThresholdsAndNothingElse) {
    struct Row {
        Threshold threshold;
        const char* kind;
        const char* says;
    };
    const Row rows[] = {
        {threshold("touch-sise", "least_mm", 9), "unknown-rule", "did you mean \"touch-size\"?"},
        {threshold("flash", "least", 9), "unknown-figure", "it has none"},
        {threshold("touch-size", "lest_mm", 9),
         "unknown-figure",
         "did you mean \"least_mm\"? there are least_mm, least_series_mm"},
        {threshold("touch-size", "least_mm", 0.5),
         "out-of-range",
         "is 0.5; allowed are 1 to 50 mm"},
        {threshold("text-contrast", "least", 21.5), "out-of-range", "allowed are 1 to 21:1"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.says);
        sample::Sample s;
        s.add_key({.x = 10, .y = 10, .width = 10, .height = 10});  // breaks some rules
        s.layout.thresholds = {row.threshold};
        s.layout.places[row.threshold.pointer] = {.line = 7, .column = 3};
        const auto found = s.all();
        ASSERT_EQ(found.size(), 1u);
        EXPECT_EQ(found[0].severity, Severity::error);
        EXPECT_EQ(found[0].rule, row.kind);
        EXPECT_EQ(found[0].place.line, 7);
        EXPECT_THAT(found[0].message, HasSubstr(row.says));
    }
}

TEST(Rule, NamesItsFiguresOnceAndKeepsThemInRange) {
    for (const Rule& rule : rules()) {
        std::set<std::string> names;
        for (const RuleFigure& figure : rule.figures) {
            SCOPED_TRACE(std::string(rule.name) + " " + figure.name);
            EXPECT_TRUE(names.insert(figure.name).second);
            EXPECT_THAT(figure.name, ::testing::MatchesRegex("[a-z0-9_]+"));
            EXPECT_STRNE(figure.meaning, "");
            for (const char* profile : {"bench", "gloved", "mobile"}) {
                EXPECT_GE(figure.value.in(profile), figure.lowest);
                EXPECT_LE(figure.value.in(profile), figure.highest);
            }
        }
    }
}

TEST(Rule, NamesTheStandingOfASourceAsPartFilesDo) {
    EXPECT_STREQ(name_of(Trust::read), "read");
    EXPECT_STREQ(name_of(Trust::second_hand), "read, second-hand");
    EXPECT_STREQ(name_of(Trust::memory), "memory");
    EXPECT_STREQ(name_of(Trust::derived), "derived");
    EXPECT_STREQ(name_of(Trust::practice), "common practice, no source");
}

}  // namespace dialplate

#include "sim/check/explanation.hpp"

#include "sim/check/folding.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

namespace dialplate {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

/// One line, however it was folded.
std::string unfolded(const std::string& text) {
    std::istringstream in(text);
    std::string out;
    for (std::string word; in >> word;)
        out += (out.empty() ? "" : " ") + word;
    return out;
}

}  // namespace

TEST(Explanation, IsCompleteForEveryRule) {
    for (const Rule& rule : rules()) {
        SCOPED_TRACE(rule.name);
        const std::string text = unfolded(explained(rule, nullptr, 80));
        EXPECT_THAT(text, ::testing::StartsWith(rule.name));
        EXPECT_THAT(text, HasSubstr(unfolded(rule.sentence)));
        EXPECT_THAT(text, HasSubstr("Computed " + unfolded(rule.computed)));
        EXPECT_THAT(text, HasSubstr("Formula " + unfolded(rule.formula)));
        EXPECT_GT(std::string(rule.computed).size(), 40u) << "says what is measured, and on what";
        ASSERT_FALSE(rule.sources.empty());
        for (const RuleSource& source : rule.sources) {
            EXPECT_THAT(text, HasSubstr(unfolded(source.text)));
            EXPECT_THAT(text, HasSubstr(name_of(source.trust)));
        }
        for (const RuleFigure& figure : rule.figures) {
            EXPECT_THAT(text, HasSubstr(figure.name));
            EXPECT_THAT(text, HasSubstr(unfolded(figure.meaning)));
            EXPECT_LE(figure.lowest, figure.value.bench);
            EXPECT_GE(figure.highest, figure.value.bench);
        }
        EXPECT_EQ(rule.figures.empty(), text.find("\"thresholds\"") == std::string::npos);
        EXPECT_THAT(text, HasSubstr("\"waived\": [{\"rule\": \"" + std::string(rule.name) + "\""));
    }
}

TEST(Explanation, GivesTheFiguresThatHoldForALayout) {
    Layout layout;
    layout.file = "dial.json";
    const Rule& rule = *rule_named("touch-size");
    EXPECT_THAT(unfolded(explained(rule, nullptr, 80)), Not(HasSubstr("in dial.json")));
    EXPECT_THAT(unfolded(explained(rule, &layout, 80)), HasSubstr("in dial.json: 9.2 mm"));
    layout.profile = "gloved";
    EXPECT_THAT(unfolded(explained(rule, &layout, 80)), HasSubstr("in dial.json: 20 mm"));
    layout.thresholds.push_back(
        {.rule = "touch-size", .figure = "least_mm", .value = 17.5, .pointer = {}});
    EXPECT_THAT(unfolded(explained(rule, &layout, 80)), HasSubstr("in dial.json: 17.5 mm"));
}

TEST(Explanation, KeepsToTheWidth) {
    for (const Rule& rule : rules()) {
        std::istringstream lines(explained(rule, nullptr, 70));
        for (std::string line; std::getline(lines, line);) {
            // What is to be copied into a layout stays on one line.
            if (line.find('"') != std::string::npos) continue;
            EXPECT_LE(line.size(), 70u) << line;
        }
    }
}

TEST(Explanation, ListsEveryRule) {
    const std::string list = "\n" + listed_rules(80);
    for (const Rule& rule : rules())
        EXPECT_THAT(list, HasSubstr(std::string("\n") + rule.name + " "));
}

TEST(Folding, BreaksAtBlanksAndIndentsWhatFollows) {
    EXPECT_EQ(folded("one two three", 7, 2), "one two\n  three");
    EXPECT_EQ(folded("one two three", 8, 0), "one two\nthree");
    EXPECT_EQ(folded("", 10, 2), "");
    EXPECT_EQ(folded("indivisible", 4, 2), "indivisible");
    EXPECT_EQ(folded("a \xC3\xA9\xC3\xA9\xC3\xA9 b", 5, 0), "a \xC3\xA9\xC3\xA9\xC3\xA9\nb")
        << "characters count, not bytes";
}

TEST(Folding, FillsUpToAColumn) {
    EXPECT_EQ(up_to(5, "ab"), "ab   ");
    EXPECT_EQ(up_to(2, "abc"), "abc ") << "one blank at least";
}

}  // namespace dialplate

#include "sim/check/check.hpp"

#include "tests/check/sample.hpp"

#include <algorithm>
#include <filesystem>
#include <set>

namespace dialplate {
namespace {

std::string file_of(std::string rule, const char* ending) {
    std::replace(rule.begin(), rule.end(), '-', '_');
    return rule + ending;
}

}  // namespace

TEST(Check, FindsNothingInASoundLayout) {
    sample::Sample s;
    s.add_key({.x = 10, .y = 10, .width = 60, .height = 60});
    s.add_key({.x = 100, .y = 10, .width = 60, .height = 60});
    s.add_legend({.x = 10, .y = 100, .width = 100, .height = 30}, s.white, s.black);
    for (const Finding& finding : s.all())
        ADD_FAILURE() << finding.rule << ": " << finding.message;
}

TEST(Check, HasAFileAndATestForEveryRule) {
    const std::filesystem::path tree = DIALPLATE_TREE;
    for (const Rule& rule : rules()) {
        SCOPED_TRACE(rule.name);
        EXPECT_TRUE(std::filesystem::exists(tree / "sim/check" / file_of(rule.name, ".cpp")));
        EXPECT_TRUE(
            std::filesystem::exists(tree / "tests/check" / file_of(rule.name, "_test.cpp")));
    }
}

TEST(Check, NamesEveryRuleOnceAndSaysWhatItAsksFor) {
    std::set<std::string> names;
    for (const Rule& rule : rules()) {
        SCOPED_TRACE(rule.name);
        EXPECT_TRUE(names.insert(rule.name).second);
        EXPECT_THAT(rule.name, ::testing::MatchesRegex("[a-z-]+"));
        EXPECT_THAT(rule.sentence, ::testing::EndsWith("."));
        EXPECT_THAT(rule.computed, ::testing::EndsWith("."));
        EXPECT_STRNE(rule.formula, "");
        ASSERT_FALSE(rule.sources.empty());
        for (const RuleSource& source : rule.sources)
            EXPECT_STRNE(source.text, "");
    }
}

TEST(Check, PlacesAFindingWhereItsItemStandsInTheFile) {
    sample::Sample s;
    s.add_key({.x = 300, .y = 10, .width = 60, .height = 60});
    s.layout.places["/pages/0"] = {.line = 4, .column = 9};
    Finding finding = sample::only(s.found("inside-glass"));
    EXPECT_EQ(finding.place.line, 4) << "the item was not written: its page";
    s.layout.places["/pages/0/items/0"] = {.line = 12, .column = 5};
    finding = sample::only(s.found("inside-glass"));
    EXPECT_EQ(finding.place.line, 12);
    EXPECT_EQ(finding.place.column, 5);
}

TEST(Check, SortsByPlace) {
    sample::Sample s;
    s.add_key({.x = 300, .y = 10, .width = 60, .height = 60});
    s.add_key({.x = 10, .y = 10, .width = 20, .height = 20});
    s.layout.places["/pages/0/items/0"] = {.line = 20, .column = 5};
    s.layout.places["/pages/0/items/1"] = {.line = 12, .column = 5};
    const auto found = s.all();
    ASSERT_GE(found.size(), 2u);
    EXPECT_TRUE(std::is_sorted(found.begin(), found.end(), [](const Finding& a, const Finding& b) {
        return a.place.line < b.place.line;
    }));
    EXPECT_EQ(found.front().place.line, 12);
    EXPECT_EQ(found.back().place.line, 20);
}

}  // namespace dialplate

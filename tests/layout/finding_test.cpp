#include "sim/layout/finding.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <vector>

namespace dialplate {
namespace {

Finding finding(const char* rule, Place place, const char* file = "") {
    Finding result;
    result.severity = Severity::must;
    result.rule = rule;
    result.place = place;
    result.file = file;
    result.message = "key \"VFO\" is 6.1 mm high, needs 9.0 mm";
    return result;
}

TEST(Finding, PrintsAsCompilersDo) {
    struct Row {
        Finding finding;
        const char* line;
        const char* source;
    };
    const Row rows[] = {
        {finding("touch-size", {12, 9}),
         "a.json:12:9: must: key \"VFO\" is 6.1 mm high, needs 9.0 mm [touch-size]",
         "GNU Coding Standards, Formatting Error Messages: sourcefile:lineno:column: message"},
        {finding("touch-size", {12, 0}),
         "a.json:12: must: key \"VFO\" is 6.1 mm high, needs 9.0 mm [touch-size]",
         "same: sourcefile:lineno: message"},
        {finding("touch-size", {}),
         "a.json: must: key \"VFO\" is 6.1 mm high, needs 9.0 mm [touch-size]",
         "the file as a whole"},
        {finding("touch-size", {3, 4}, "parts/mcus.json"),
         "parts/mcus.json:3:4: must: key \"VFO\" is 6.1 mm high, needs 9.0 mm [touch-size]",
         "a finding in a part file"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(gnu_line("a.json", row.finding), row.line);
    }
}

TEST(Finding, NamesEverySeverity) {
    EXPECT_STREQ(name_of(Severity::error), "error");
    EXPECT_STREQ(name_of(Severity::must), "must");
    EXPECT_STREQ(name_of(Severity::should), "should");
    EXPECT_STREQ(name_of(Severity::note), "note");
}

TEST(Finding, SortsByFileThenPlaceThenRule) {
    std::vector<Finding> findings = {finding("e", {1, 1}, "parts.json"),
                                     finding("d", {10, 1}),
                                     finding("c", {2, 30}),
                                     finding("b", {2, 4}),
                                     finding("a", {2, 4})};
    sort_by_place(findings);
    std::vector<std::string> rules;
    for (const Finding& each : findings)
        rules.push_back(each.rule);
    EXPECT_THAT(rules, testing::ElementsAre("a", "b", "c", "d", "e"));
}

}  // namespace
}  // namespace dialplate

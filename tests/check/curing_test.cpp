#include "sim/check/curing.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

/// A world of its own to be cured: a document of a few numbers. "a" and "b" are to be 10 or more (must, the
/// cure sets 10), their sum at most "most" (must, no cure), "c" even (should, the cure is a wrong number that
/// stays odd), "d" absent (note).
std::vector<Finding> examine(const std::string& document) {
    const auto json = nlohmann::json::parse(document);
    std::vector<Finding> found;
    const auto add =
        [&](Severity severity, const char* rule, const char* pointer, std::vector<Change> changes) {
            Finding finding;
            finding.severity = severity;
            finding.rule = rule;
            finding.pointer = pointer;
            finding.message = std::string(pointer) + " breaks " + rule;
            finding.cure = std::move(changes);
            found.push_back(finding);
        };
    const auto set = [](const char* pointer, const char* value) {
        return std::vector<Change>{
            {.kind = Change::Kind::replace, .pointer = pointer, .value = value}};
    };
    if (json["a"] < 10) add(Severity::must, "least", "/a", set("/a", "10"));
    if (json["b"] < 10) add(Severity::must, "least", "/b", set("/b", "10"));
    if (json["a"].get<int>() + json["b"].get<int>() > json["most"])
        add(Severity::must, "sum", "/most", {});
    if (json.contains("c") && json["c"].get<int>() % 2 == 1)
        add(Severity::should, "even", "/c", set("/c", "3"));
    if (json.contains("d"))
        add(Severity::note, "absent", "/d", {{.kind = Change::Kind::remove, .pointer = "/d"}});
    if (json.contains("waived") && !found.empty()) found[0].waived = "on purpose";
    return found;
}

}  // namespace

TEST(Cure, MakesTheChangesAndLeavesEveryOtherByte) {
    const Cured cured = cure("{ \"a\":  4, \"b\": 12,\n  \"most\": 99 , \"d\": 0 }", examine);
    EXPECT_EQ(cured.document, "{ \"a\":  10, \"b\": 12,\n  \"most\": 99 }");
    EXPECT_THAT(cured.cured, SizeIs(2));
    EXPECT_THAT(cured.refused, IsEmpty());
    EXPECT_THAT(cured.left, IsEmpty());
}

TEST(Cure, NeverMakesANewMust) {
    // One of the two fits below the sum; the second would break it.
    const Cured cured = cure(R"({"a": 4, "b": 4, "most": 15})", examine);
    EXPECT_EQ(cured.document, R"({"a": 10, "b": 4, "most": 15})");
    ASSERT_THAT(cured.cured, SizeIs(1));
    EXPECT_EQ(cured.cured[0].pointer, "/a");
    ASSERT_THAT(cured.refused, SizeIs(1));
    EXPECT_EQ(cured.refused[0].finding.pointer, "/b");
    EXPECT_THAT(cured.refused[0].why, HasSubstr("then /most breaks sum [sum]"));
    EXPECT_THAT(cured.left, SizeIs(1));
}

TEST(Cure, TakesBackWhatDoesNotHelp) {
    const std::string document = R"({"a": 10, "b": 10, "most": 20, "c": 5})";
    const Cured cured = cure(document, examine);
    EXPECT_EQ(cured.document, document);
    EXPECT_THAT(cured.cured, IsEmpty());
    ASSERT_THAT(cured.refused, SizeIs(1));
    EXPECT_THAT(cured.refused[0].why, HasSubstr("still"));
}

TEST(Cure, LeavesAloneWhatWasAcceptedOnPurpose) {
    const std::string document = R"({"a": 4, "b": 10, "most": 20, "waived": 0})";
    EXPECT_EQ(cure(document, examine).document, document);
}

TEST(Cure, DoesNotTouchADocumentWithErrors) {
    const auto mistaken = [](const std::string&) {
        std::vector<Finding> found(2);
        found[1].severity = Severity::must;
        found[1].cure = {{.kind = Change::Kind::remove, .pointer = "/a"}};
        return found;
    };
    EXPECT_EQ(cure(R"({"a": 1})", mistaken).document, R"({"a": 1})");
}

TEST(Cure, SaysWhenAChangeCannotBeMade) {
    const auto pointing_nowhere = [](const std::string&) {
        std::vector<Finding> found(1);
        found[0].severity = Severity::must;
        found[0].cure = {{.kind = Change::Kind::remove, .pointer = "/nothing"}};
        return found;
    };
    const Cured cured = cure(R"({"a": 1})", pointing_nowhere);
    ASSERT_THAT(cured.refused, SizeIs(1));
    EXPECT_THAT(cured.refused[0].why, HasSubstr("/nothing"));
}

}  // namespace dialplate

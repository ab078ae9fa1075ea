#include "sim/check/report.hpp"

#include "sim/check/check.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

using ::testing::HasSubstr;
using Json = nlohmann::json;

Finding small_key() {
    Finding finding;
    finding.severity = Severity::must;
    finding.rule = "touch-spacing";
    finding.pointer = "/pages/0/items/3";
    finding.place = {.line = 12, .column = 9};
    finding.message = "key \"AM\" is too small";
    finding.measured = 5.4;
    finding.required = 6.35;
    finding.unit = "mm";
    finding.source = "WCAG 2.2 SC 2.5.8";
    return finding;
}

Finding dead_key() {
    Finding finding;
    finding.severity = Severity::should;
    finding.rule = "key-action";
    finding.pointer = "/pages/0/items/4";
    finding.message = "key \"FM\" does nothing";
    finding.source = "common practice, no source";
    return finding;
}

Finding accepted() {
    Finding finding = small_key();
    finding.waived = "used with a stylus";
    return finding;
}

Finding mistake() {
    Finding finding;
    finding.severity = Severity::error;
    finding.rule = "unknown-member";
    finding.message = "there is no member \"colour\"";
    return finding;
}

}  // namespace

TEST(Report, WritesOneLineAFindingAndCountsThem) {
    const Report reports[] = {{"dial.json", {small_key(), dead_key(), accepted()}}};
    const std::string lines = report_lines(reports);
    EXPECT_THAT(lines,
                HasSubstr("dial.json:12:9: must: key \"AM\" is too small [touch-spacing]\n"));
    EXPECT_THAT(lines, HasSubstr("[touch-spacing] (waived: used with a stylus)\n"));
    EXPECT_THAT(lines, ::testing::EndsWith("1 must, 1 should, 0 note, 1 waived\n"));
}

TEST(Report, GivesTheExitStatusOfTheWorstThatCounts) {
    const Report fine[] = {{"a.json", {dead_key(), accepted()}}};
    const Report must[] = {{"a.json", {dead_key()}}, {"b.json", {small_key()}}};
    const Report unusable[] = {{"a.json", {small_key(), mistake()}}};
    EXPECT_EQ(exit_status(fine), 0);
    EXPECT_EQ(exit_status(must), 1);
    EXPECT_EQ(exit_status(unusable), 2);
    EXPECT_EQ(exit_status({}), 0);
}

TEST(Report, PutsTheAgreedNamesIntoItsJson) {
    const Report reports[] = {{"dial.json", {small_key(), accepted(), dead_key()}}};
    const Json json = Json::parse(report_json(reports));
    const Json& first = json["findings"][0];
    EXPECT_EQ(first["rule"], "touch-spacing");
    EXPECT_EQ(first["severity"], "must");
    EXPECT_EQ(first["item"], "/pages/0/items/3");
    EXPECT_EQ(first["line"], 12);
    EXPECT_EQ(first["column"], 9);
    EXPECT_EQ(first["measured"], 5.4);
    EXPECT_EQ(first["required"], 6.35);
    EXPECT_EQ(first["unit"], "mm");
    EXPECT_EQ(first["message"], "key \"AM\" is too small");
    EXPECT_EQ(first["source"], "WCAG 2.2 SC 2.5.8");
    EXPECT_EQ(first["file"], "dial.json");
    EXPECT_TRUE(first["waived"].is_null());
    EXPECT_EQ(json["findings"][1]["waived"], "used with a stylus");
    EXPECT_TRUE(json["findings"][2]["measured"].is_null());
    EXPECT_EQ(json["counts"]["must"], 1);
    EXPECT_EQ(json["counts"]["should"], 1);
    EXPECT_EQ(json["counts"]["note"], 0);
    EXPECT_EQ(json["counts"]["waived"], 1);
}

TEST(Report, StaysJsonWhenAFileNameIsNoUtf8) {
    const Report reports[] = {{"d\xFFial.json", {small_key()}}};
    EXPECT_TRUE(Json::accept(report_json(reports)));
    EXPECT_TRUE(Json::accept(report_sarif(reports)));
}

TEST(Report, NamesThePartFileThatAFindingStandsIn) {
    Finding elsewhere = mistake();
    elsewhere.file = "parts/displays.json";
    elsewhere.place = {.line = 3, .column = 1};
    const Report reports[] = {{"dial.json", {elsewhere}}};
    EXPECT_EQ(Json::parse(report_json(reports))["findings"][0]["file"], "parts/displays.json");
    EXPECT_THAT(report_sarif(reports), HasSubstr("\"uri\": \"parts/displays.json\""));
}

TEST(Report, FollowsTheSarifStandard) {
    const std::string eleven_lines = "\n\n\n\n\n\n\n\n\n\n\n";
    const Report reports[] = {{"my layouts/a:b.json",
                               {small_key(), accepted(), dead_key(), mistake()},
                               eleven_lines + "        {}"}};
    const Json log = Json::parse(report_sarif(reports));
    EXPECT_EQ(log["version"], "2.1.0");
    const Json& run = log["runs"][0];
    const Json& listed = run["tool"]["driver"]["rules"];
    ASSERT_EQ(listed.size(), rules().size());
    const Json& results = run["results"];
    ASSERT_EQ(results.size(), 4u);
    for (const Json& result : results) {
        if (!result.contains("ruleIndex")) continue;
        EXPECT_EQ(listed[result["ruleIndex"].get<std::size_t>()]["id"], result["ruleId"])
            << "SARIF 2.1.0, 3.27.6";
    }
    const Json& place = results[0]["locations"][0]["physicalLocation"];
    EXPECT_EQ(place["artifactLocation"]["uri"], "my%20layouts/a%3Ab.json");
    EXPECT_EQ(place["region"]["startLine"], 12);
    EXPECT_EQ(place["region"]["startColumn"], 9);
    EXPECT_EQ(results[0]["level"], "error");
    EXPECT_FALSE(results[0].contains("suppressions"));
    EXPECT_EQ(results[1]["suppressions"][0]["justification"], "used with a stylus");
    EXPECT_EQ(results[2]["level"], "warning");
    EXPECT_FALSE(results[2]["locations"][0]["physicalLocation"].contains("region"))
        << "a line counts from 1, 3.30.5: none is given where none is known";
    EXPECT_EQ(results[3]["level"], "error");
    EXPECT_FALSE(results[3].contains("ruleIndex")) << "not a rule of the list";
}

TEST(Report, CountsSarifColumnsInCharacters) {
    // SARIF 2.1.0, 3.14.17: "unicodeCodePoints". The place counts bytes; before it stand "a", an e with an
    // accent (2 bytes), a clef (4 bytes) and a blank: 8 bytes, 4 characters.
    Finding finding = small_key();
    finding.place = {.line = 2, .column = 9};
    const std::string text = "{\na\xC3\xA9\xF0\x9D\x84\x9E {}\n}";
    const auto region_of = [&](const std::string& document, const Finding& of) {
        const Report reports[] = {{"dial.json", {of}, document}};
        return Json::parse(report_sarif(
            reports))["runs"][0]["results"][0]["locations"][0]["physicalLocation"]["region"];
    };
    const Json region = region_of(text, finding);
    EXPECT_EQ(region["startLine"], 2);
    EXPECT_EQ(region["startColumn"], 5);
    EXPECT_FALSE(region_of("", finding).contains("startColumn")) << "no text to count in";
    finding.file = "parts/displays.json";
    EXPECT_FALSE(region_of(text, finding).contains("startColumn")) << "another file's column";
}

TEST(Report, HandsCuresOnAsPatchAndAsFix) {
    Finding finding = small_key();
    finding.pointer = "/items/0";
    finding.cure = {{.kind = Change::Kind::replace, .pointer = "/items/0/at", .value = "[4, 2]"}};
    const std::string text = "{\"items\": [\n  {\"n\": \"\xC3\xA9\", \"at\": [4,  0]}]}";
    const Report reports[] = {{"dial.json", {finding, dead_key()}, text}};
    const Json patch = Json::parse(report_json(reports))["findings"][0]["cure"];
    EXPECT_EQ(patch, Json::parse(R"([{"op": "replace", "path": "/items/0/at", "value": [4, 2]}])"));
    EXPECT_EQ(Json::parse(text).patch(patch)["items"][0]["at"], Json::parse("[4, 2]"));
    EXPECT_EQ(Json::parse(report_json(reports))["findings"][1]["cure"], Json::array());

    const Json results = Json::parse(report_sarif(reports))["runs"][0]["results"];
    const Json replacement = results[0]["fixes"][0]["artifactChanges"][0]["replacements"][0];
    EXPECT_EQ(replacement["insertedContent"]["text"], "[4, 2]");
    // Line 2: two blanks, {"n": "é", "at": takes up to column 19; [4,  0] is 7 characters long.
    EXPECT_EQ(replacement["deletedRegion"],
              Json::parse(R"({"startLine": 2, "startColumn": 20, "endLine": 2, "endColumn": 27})"));
    EXPECT_FALSE(results[1].contains("fixes"));
}

TEST(Report, MakesNoFixOfACureThatTakesSomethingOut) {
    Finding finding = small_key();
    finding.cure = {{.kind = Change::Kind::remove, .pointer = "/a"}};
    const Report reports[] = {{"dial.json", {finding}, R"({"a": 1, "b": 2})"}};
    EXPECT_FALSE(Json::parse(report_sarif(reports))["runs"][0]["results"][0].contains("fixes"));
    EXPECT_EQ(Json::parse(report_json(reports))["findings"][0]["cure"],
              Json::parse(R"([{"op": "remove", "path": "/a"}])"));
}

}  // namespace dialplate

// What is wrong with a layout's members: one mistake each, put into a layout that uses everything.
#include "sim/layout/reader.hpp"
#include "tests/layout/layout_files.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <sstream>
#include <vector>

namespace dialplate {
namespace {

TEST(LayoutMistakes, AreToldOnceAtTheirPlaceWithWhatIsAllowed) {
    const std::string base = contents(fixtures / "good/everything.json");
    const auto table = nlohmann::json::parse(contents(fixtures / "mistakes.json"));
    ASSERT_FALSE(table.at("mistakes").empty());
    for (const auto& row : table.at("mistakes")) {
        const std::string find = row.at("find");
        const std::string replace = row.at("replace");
        SCOPED_TRACE(find + "  ->  " + replace);
        const std::size_t at = base.find(find);
        ASSERT_NE(at, std::string::npos);
        std::string text = base;
        text.replace(at, find.size(), replace);
        // The place: the @ in the replacement, or in the piece of text given by "at".
        std::size_t expected = 0;
        if (const std::size_t mark = replace.find('@'); mark != std::string::npos) {
            expected = at + mark;
            text.erase(expected, 1);
        } else if (std::string where = row.at("at"); where != "document") {
            const std::size_t in_where = where.find('@');
            ASSERT_NE(in_where, std::string::npos);
            where.erase(in_where, 1);
            const std::size_t found = text.find(where);
            ASSERT_NE(found, std::string::npos);
            expected = found + in_where;
        }
        const Place place = place_of(text, expected);

        const Reading reading = read_layout(text, "x.json", fixtures / "good");
        SCOPED_TRACE(lines_of(reading));
        EXPECT_FALSE(reading.layout.has_value());
        ASSERT_EQ(reading.findings.size(), 1u + row.value("and", 0u));
        // "and" counts what follows from it and is told too, perhaps at an earlier place.
        const auto same_rule = std::find_if(
            reading.findings.begin(), reading.findings.end(), [&](const Finding& each) {
                return each.rule == row.at("rule");
            });
        ASSERT_NE(same_rule, reading.findings.end());
        const Finding& finding = *same_rule;
        EXPECT_EQ(finding.severity, Severity::error);
        EXPECT_THAT(finding.message, testing::HasSubstr(row.at("says")));
        EXPECT_EQ(finding.place.line, place.line);
        EXPECT_EQ(finding.place.column, place.column);
    }
}

// Each fixtures/broken/NAME.json has in NAME.txt all the lines that it should give, in order.
TEST(LayoutMistakes, AreAllReportedAtOnceInOrderOfPlace) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(fixtures / "broken")) {
        if (entry.path().extension() != ".json") continue;
        ++files;
        const std::string name = entry.path().filename().string();
        const Reading reading = read_layout(contents(entry.path()), name, fixtures / "broken");
        std::filesystem::path expected = entry.path();
        EXPECT_EQ(lines_of(reading, name), contents(expected.replace_extension(".txt")));
        EXPECT_FALSE(reading.layout.has_value());
    }
    EXPECT_GT(files, 0);
}

TEST(LayoutMistakes, PointAtTheItem) {
    std::string text = contents(fixtures / "good/everything.json");
    const std::string right = "\"look\": \"plain\", \"radius\"";
    text.replace(text.find(right), right.size(), "\"look\": \"plane\", \"radius\"");
    const Reading reading = read_layout(text, "x.json", fixtures / "good");
    ASSERT_EQ(reading.findings.size(), 1u);
    EXPECT_EQ(reading.findings[0].pointer, "/pages/0/items/2/look");
}

// Limits of counts, which would make long fixtures.
std::string with(const std::string& section, const std::string& contents_of_it) {
    std::string text = contents(fixtures / "good/minimal.json");
    const std::string end = "\"pages\": [";
    text.replace(text.find(end), 0, section + contents_of_it + ",\n  ");
    return text;
}

std::string repeated(int count, const std::string& before, const std::string& after) {
    std::ostringstream text;
    for (int i = 0; i < count; ++i) {
        text << (i > 0 ? "," : "") << before << i << after;
    }
    return text.str();
}

TEST(LayoutMistakes, CountWhatTheImageCanHold) {
    struct Row {
        const char* section;
        const char* open;
        const char* before;
        const char* after;
        const char* close;
        int most;
        const char* source;
    };
    const Row rows[] = {
        {"\"palettes\": ", "{", "\"p", "\": {}", "}", 254, "ui/image.md: u8 palettes, one is main"},
        {"\"looks\": ",
         "{",
         "\"p",
         R"(": {"idle": {"ink": "ground", "fill": "ground"}})",
         "}",
         255,
         "ui/image.md: u8 looks"},
        {"\"faces\": ",
         "{",
         "\"p",
         R"(": {"file": "a.bdf", "size": 9})",
         "}",
         255,
         "ui/image.md: u8 faces"},
        {"\"values\": ", "{", "\"p", R"(": {"type": "flag"})", "}", 255, "ui/image.md: u8 values"},
        {"\"values\": ",
         R"({"v": {"type": "choice", "choices": [)",
         "\"c",
         "\"",
         "]}}",
         255,
         "ui/image.md: a choice has 1 byte"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        for (const int count : {row.most, row.most + 1}) {
            const Reading reading = read_layout(
                with(row.section, row.open + repeated(count, row.before, row.after) + row.close),
                "x.json",
                fixtures / "good");
            EXPECT_EQ(reading.layout.has_value(), count <= row.most) << lines_of(reading);
            EXPECT_EQ(reading.findings.size(), count <= row.most ? 0u : 1u);
            if (count > row.most) {
                EXPECT_EQ(reading.findings[0].rule, "out-of-range");
            }
        }
    }
}

TEST(LayoutMistakes, CountPages) {
    const auto pages = [](int count) {
        std::string text = contents(fixtures / "good/minimal.json");
        const std::string only = R"({"name": "main", "ground": "ground", "items": []})";
        text.replace(text.find(only),
                     only.size(),
                     repeated(count, "{\"name\": \"p", R"(", "ground": "ground", "items": []})"));
        return read_layout(text, "x.json", fixtures / "good");
    };
    EXPECT_TRUE(pages(64).layout.has_value());
    ASSERT_EQ(pages(65).findings.size(), 1u);
    EXPECT_EQ(pages(65).findings[0].rule, "out-of-range");
    EXPECT_EQ(pages(0).findings.size(), 1u);
}

TEST(LayoutMistakes, DoNotFollowFromOneAnother) {
    // The section that everything refers to is unusable: that alone is told.
    std::string text = contents(fixtures / "good/everything.json");
    const std::size_t from = text.find("\"faces\": {");
    const std::size_t to = text.find("\"values\": {");
    text.replace(from, to - from, "\"faces\": 5, ");
    const Reading reading = read_layout(text, "x.json", fixtures / "good");
    ASSERT_EQ(reading.findings.size(), 1u) << lines_of(reading);
    EXPECT_EQ(reading.findings[0].pointer, "/faces");
}

TEST(LayoutMistakes, ThousandsOfThemAreAllTold) {
    const Reading reading = read_layout(
        with("\"faces\": ",
             "{" + repeated(200, "\"f", R"(": {"fiel": "a", "sise": 9, "x": 1})") + "}"),
        "x.json",
        fixtures / "good");
    EXPECT_EQ(std::count_if(reading.findings.begin(),
                            reading.findings.end(),
                            [](const Finding& f) { return f.rule == "unknown-member"; }),
              600);
}

}  // namespace
}  // namespace dialplate

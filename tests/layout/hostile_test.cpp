// Files that are no layout at all, or were one until something happened to them.
#include "sim/layout/reader.hpp"
#include "sim/layout/source_text.hpp"
#include "tests/layout/layout_files.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <string>

namespace dialplate {
namespace {

using testing::HasSubstr;

TEST(HostileText, BreaksOffWithAPlaceAndWhatIsNeeded) {
    struct Row {
        std::string text;  // @ marks the place and is taken out
        const char* rule;
        const char* says;
    };
    const Row rows[] = {
        {"@", "empty-file", "the file is empty"},
        {"@ \n\t\r\n", "empty-file", "the file is empty"},
        {"@[]", "wrong-type", "layout is a list of 0; needs an object"},
        {"@7", "wrong-type", "layout is 7"},
        {"@\"x\"", "wrong-type", "layout is text \"x\""},
        {"@null", "wrong-type", "layout is null"},
        {"{@", "syntax", "ends too early: needs a member name in double quotes, or }"},
        {"{\n  \"a\"@", "syntax", "needs a colon after the member name"},
        {"{\"a\":@", "syntax", "needs a value"},
        {"{\"a\": 1@", "syntax", "needs a comma or }; the object begun in line 1, column 1"},
        {"{\"a\": [1,\n@", "syntax", "needs a value; the list begun in line 1, column 7"},
        {"{\"a\": 1 @\"b\": 2}", "syntax", "a comma is missing before \"b\""},
        {"{\"a\": 1,@}", "syntax", "nothing stands between the comma and }"},
        {"{\"a\": [1,2, @]}", "syntax", "nothing stands between the comma and ]"},
        {"{\"a\": 1,@, \"b\": 2}", "syntax", "found \",\"; needs a member name"},
        {"{\"a\": 1@]", "syntax", "found \"]\"; needs a comma or }"},
        {"{@a: 1}", "syntax", "needs a member name in double quotes"},
        {"{@'a': 1}", "syntax", "text stands in double quotes"},
        {"{@// note\n}", "syntax", "JSON has no comments"},
        {"{\"a\": @tru}", "syntax", "\"tru\" is no value"},
        {"{\"a\": @NaN}", "syntax", "\"NaN\" is no value"},
        {"{\"a\": @+1}", "syntax", "found \"+1\"; needs a value"},
        {"{\"a\": @.5}", "syntax", "found \".5\"; needs a value"},
        {"{\"a\": @-}", "syntax", "found \"-\"; needs a value"},
        {"{\"a\": @\"b}\n", "syntax", "not closed by a quote before its line ends"},
        {"{\"a\": \"b\\@", "syntax", ""},
        {"{\"a\": \"b@\\q\"}", "syntax", "unknown escape \\q"},
        {"{\"a\": \"b@\\u12g4\"}", "syntax", "\\u without four hexadecimal digits"},
        {"{\"a\": \"@\\ud800\"}", "syntax", "half of a \\u pair"},
        {"{\"a\": \"b@\tc\"}", "syntax", "control character (9)"},
        {"{} @x", "trailing-text", "has ended, but \"x\" follows"},
        {"{}\n\n@{}", "trailing-text", "has ended"},
        {"{} @,", "trailing-text", "has ended"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.text);
        std::string text = row.text;
        const std::size_t mark = text.find('@');
        text.erase(mark, 1);
        const Reading reading = read_layout(text, "x.json", ".");
        SCOPED_TRACE(lines_of(reading));
        EXPECT_FALSE(reading.layout.has_value());
        ASSERT_FALSE(reading.findings.empty());
        const Finding& finding = reading.findings[0];
        EXPECT_EQ(finding.rule, row.rule);
        EXPECT_THAT(finding.message, HasSubstr(row.says));
        if (row.says[0] == '\0') continue;
        const Place place = place_of(text, mark);
        EXPECT_EQ(finding.place.line, place.line);
        EXPECT_EQ(finding.place.column, place.column);
    }
}

TEST(HostileText, NamesTheObjectInWhichItBreaksOff) {
    const Reading syntax =
        read_layout("{\"pages\": [{}, {\"items\": [{\"kind\": 1,}]}]}", "x", ".");
    ASSERT_EQ(syntax.findings.size(), 1u);
    EXPECT_EQ(syntax.findings[0].pointer, "/pages/1/items/0");
    const Reading twice = read_layout("{\"mcu\": {\"part\": \"\", \"part\": 1}}", "x", ".");
    EXPECT_TRUE(std::any_of(twice.findings.begin(), twice.findings.end(), [](const Finding& f) {
        return f.rule == "duplicate-member" && f.pointer == "/mcu/part";
    })) << lines_of(twice);
}

TEST(HostileText, IsCheckedForUtf8) {
    struct Row {
        std::string bytes;
        std::size_t length;
        const char* source;
    };
    const Row rows[] = {
        {"A", 1, "RFC 3629, 3: 0xxxxxxx"},
        {"\xC2\xA9", 2, "RFC 3629, 3: 110xxxxx 10xxxxxx"},
        {"\xE2\x89\xA2", 3, "RFC 3629, 7: U+2262"},
        {"\xF0\xA3\x8E\xB4", 4, "RFC 3629, 7: U+233B4"},
        {"\xF4\x8F\xBF\xBF", 4, "U+10FFFF, the last one"},
        {"\xC0\x80", 0, "RFC 3629, 10: overlong NUL"},
        {"\xE0\x80\x80", 0, "overlong"},
        {"\xF0\x80\x80\x80", 0, "overlong"},
        {"\xED\xA0\x80", 0, "RFC 3629, 3: surrogate U+D800"},
        {"\xF4\x90\x80\x80", 0, "beyond U+10FFFF"},
        {"\xF5\x80\x80\x80", 0, "RFC 3629, 1: F5 never appears"},
        {"\x80", 0, "a continuation without a start"},
        {"\xE2\x89", 0, "cut short"},
        {"\xE2\x41\xA2", 0, "interrupted"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.source);
        EXPECT_EQ(utf8_sequence(row.bytes), row.length);
        const Reading reading = read_layout("{\n\"a" + row.bytes + "\": 1}", "x.json", ".");
        const bool complained = std::any_of(
            reading.findings.begin(), reading.findings.end(), [](const Finding& finding) {
                return finding.rule == "utf8";
            });
        EXPECT_EQ(complained, row.length == 0);
    }
}

TEST(HostileText, NamesTheByteThatIsNotUtf8) {
    const Reading reading = read_layout(
        "{\n  \"title\": \"Gr\xFC\xDF"
        "e\"}",
        "x.json",
        ".");
    ASSERT_EQ(reading.findings.size(), 2u) << "both bytes, and nothing that follows from them";
    EXPECT_EQ(gnu_line("x.json", reading.findings[0]),
              "x.json:2:15: error: byte 17 of the file, 0xFC, is not UTF-8; save the file as UTF-8 "
              "[utf8]");
    EXPECT_EQ(reading.findings[1].place.column, 16);
}

TEST(HostileText, KeepsTheListOfBadBytesShort) {
    const Reading reading = read_layout(std::string(1000, '\xFF'), "x.json", ".");
    EXPECT_LE(reading.findings.size(), 21u);
    EXPECT_GE(reading.findings.size(), 1u);
}

TEST(HostileText, MayNotBeginWithAByteOrderMark) {
    const std::string good = contents(fixtures / "good/minimal.json");
    const Reading marked = read_layout("\xEF\xBB\xBF" + good, "x.json", ".");
    ASSERT_EQ(marked.findings.size(), 1u) << "the rest is read as ever: " << lines_of(marked);
    EXPECT_EQ(marked.findings[0].rule, "byte-order-mark");
    EXPECT_EQ(marked.findings[0].place.line, 1);
    EXPECT_EQ(marked.findings[0].place.column, 1);

    const Reading both = read_layout("\xEF\xBB\xBF{\"tilte\": 1}", "x.json", ".");
    ASSERT_GE(both.findings.size(), 2u);
    const auto misspelt =
        std::find_if(both.findings.begin(), both.findings.end(), [](const Finding& finding) {
            return finding.rule == "unknown-member";
        });
    ASSERT_NE(misspelt, both.findings.end());
    EXPECT_EQ(misspelt->place.column, 5) << "columns count bytes, those of the mark too";

    const Reading wide = read_layout(std::string("\xFF\xFE{\0}\0", 6), "x.json", ".");
    ASSERT_EQ(wide.findings.size(), 1u);
    EXPECT_THAT(wide.findings[0].message, HasSubstr("UTF-16"));
}

TEST(HostileText, MayNotNestWithoutEnd) {
    for (const auto& [open, close] : {std::pair("[", "]"), std::pair("{\"a\":", "}")}) {
        std::string bomb;
        for (int i = 0; i < 100000; ++i)
            bomb += open;
        const Reading reading = read_layout(bomb, "x.json", ".");
        ASSERT_EQ(reading.findings.size(), 1u);
        EXPECT_EQ(reading.findings[0].rule, "too-deep");
        EXPECT_EQ(reading.findings[0].place.column,
                  static_cast<int>(std::string(open).size()) * 32 + 1)
            << "the 33rd is one too many";
    }
    std::string deepest = "{\"a\": ";
    for (int i = 0; i < 31; ++i)
        deepest += '[';
    for (int i = 0; i < 31; ++i)
        deepest += ']';
    const Reading reading = read_layout(deepest + '}', "x.json", ".");
    EXPECT_TRUE(std::none_of(reading.findings.begin(),
                             reading.findings.end(),
                             [](const Finding& finding) { return finding.rule == "too-deep"; }));
}

TEST(HostileText, MayNotBeLargerThanFourMebibytes) {
    std::string text = contents(fixtures / "good/minimal.json");
    text.resize(std::size_t{4} << 20, ' ');
    EXPECT_TRUE(read_layout(text, "x.json", ".").layout.has_value());
    text += ' ';
    const Reading reading = read_layout(text, "x.json", ".");
    ASSERT_EQ(reading.findings.size(), 1u);
    EXPECT_EQ(reading.findings[0].rule, "too-large");
}

TEST(HostileText, ReportsEveryNumberThatNothingHolds) {
    const Reading reading =
        read_layout("{\"turn\": 1e999, \"taken\": {\"ram\": -1e999}, \"tilte\": 1}", "x.json", ".");
    EXPECT_EQ(std::count_if(reading.findings.begin(),
                            reading.findings.end(),
                            [](const Finding& f) { return f.rule == "out-of-range"; }),
              2)
        << lines_of(reading);
    EXPECT_EQ(std::count_if(reading.findings.begin(),
                            reading.findings.end(),
                            [](const Finding& f) { return f.rule == "unknown-member"; }),
              1)
        << "and what else is wrong: " << lines_of(reading);
}

TEST(HostileFile, IsNamedWhenItCannotBeRead) {
    struct Row {
        std::string path;
        const char* rule;
    };
    const Row rows[] = {
        {(fixtures / "no-such-layout.json").string(), "missing-file"},
        {(fixtures / "good/minimal.json/x.json").string(), "missing-file"},
        {fixtures.string(), "unreadable-file"},
        {"", "missing-file"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.path);
        const Reading reading = load_layout(row.path);
        EXPECT_FALSE(reading.layout.has_value());
        ASSERT_EQ(reading.findings.size(), 1u);
        EXPECT_EQ(reading.findings[0].rule, row.rule);
        EXPECT_EQ(reading.findings[0].place.line, 0) << "the file as a whole";
    }
}

// A place lies in the file, at most one byte behind its end.
void expect_located(const Reading& reading, const std::string& text) {
    ASSERT_FALSE(reading.findings.empty());
    const int lines = 1 + static_cast<int>(std::count(text.begin(), text.end(), '\n'));
    for (const Finding& finding : reading.findings) {
        EXPECT_GE(finding.place.line, 1);
        EXPECT_LE(finding.place.line, lines);
        EXPECT_GE(finding.place.column, 1);
        EXPECT_FALSE(finding.message.empty());
        EXPECT_FALSE(finding.rule.empty());
    }
}

TEST(HostileText, CutOffAfterAnyByteHasAPlace) {
    for (const char* name : {"good/minimal.json", "good/everything.json"}) {
        const std::string whole = contents(fixtures / name);
        const std::size_t end = whole.find_last_of('}');
        ASSERT_NE(end, std::string::npos);
        for (std::size_t length = 0; length <= end; ++length) {
            SCOPED_TRACE(length);
            const std::string text = whole.substr(0, length);
            const Reading reading = read_layout(text, "x.json", fixtures / "good");
            ASSERT_FALSE(reading.layout.has_value());
            ASSERT_EQ(reading.findings.size(), 1u);
            expect_located(reading, text);
            // Where the text ends, but for a word or text that is cut: where that begins.
            const Place last = place_of(text, text.size());
            ASSERT_GE(reading.findings[0].place.line, last.line - 1);
        }
    }
}

TEST(HostileText, WithOneBitTurnedIsReadOrHasAPlace) {
    const auto turn_bits = [](const char* name, std::size_t stride) {
        const std::string whole = contents(fixtures / name);
        for (std::size_t i = 0; i < whole.size() * 8; i += stride) {
            std::string text = whole;
            text[i / 8] = static_cast<char>(text[i / 8] ^ (1 << (i % 8)));
            const Reading reading = read_layout(text, "x.json", fixtures / "good");
            SCOPED_TRACE(i);
            ASSERT_EQ(reading.layout.has_value(), reading.findings.empty());
            if (!reading.layout) expect_located(reading, text);
        }
    };
    turn_bits("good/minimal.json", 1);
    turn_bits("good/everything.json", 97);  // prime to 8: every bit gets its turn
}

}  // namespace
}  // namespace dialplate

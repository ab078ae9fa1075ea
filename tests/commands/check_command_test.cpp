// `dialplate check`: explanations, cures, and what its output looks like.
#include "sim/commands/grouped_findings.hpp"
#include "tests/commands/program.hpp"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::EndsWith;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

using CheckCommand = Program;

/// A layout that is sound but for an item two rows behind the panel, and a page that is noted to be slow; written with the author's own spacing.
const std::string hidden_by_two_rows = R"({
  "title": "One number",
  "display": "2.8in-ILI9341", "turn": 90,
  "mcu": {"part": "ATmega328P", "clock_mhz": 16}, "bus": {"kind": "spi", "clock_mhz": 8},
  "opening": {"left_mm": 0, "top_mm": 0.36, "width_mm": 57.6, "height_mm": 42.84},
  "paints":   {"ground": "#101418", "ink": "#F2EFE6"},
  "faces": {"lit": {"segments": {"width": 22, "height": 40, "stroke": 5}}},
  "values": {"frequency": {"type": "number", "min": 0, "max": 29999999}},
  "pages": [{"name": "main", "ground": "ground", "items": [
    {"kind": "readout", "at": [8,  0], "size": [304, 48], "value": "frequency", "face": "lit", "ink": "ink"}
  ]}]
}
)";

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    return text.replace(text.find(from), from.size(), to);
}

Finding finding(Severity severity, const char* rule, int line, const char* message) {
    Finding made;
    made.severity = severity;
    made.rule = rule;
    made.place = {.line = line, .column = 9};
    made.message = message;
    return made;
}

TEST_F(CheckCommand, ExplainsARule) {
    const Outcome result = run("check --explain touch-spacing");
    EXPECT_EQ(result.status, 0);
    EXPECT_THAT(result.err, IsEmpty());
    EXPECT_THAT(result.out, StartsWith("touch-spacing\n"));
    EXPECT_THAT(result.out, HasSubstr("WCAG 2.2 SC 2.5.8"));
}

TEST_F(CheckCommand, ExplainsARuleForALayout) {
    write("gloved.json",
          replaced(hidden_by_two_rows, "\"title\"", "\"profile\": \"gloved\", \"title\""));
    const Outcome result = run("check --explain touch-size gloved.json");
    EXPECT_EQ(result.status, 0) << result.err;
    EXPECT_THAT(result.out, HasSubstr("in gloved.json: 20 mm"));
}

TEST_F(CheckCommand, ListsTheRules) {
    const Outcome result = run("check --explain");
    EXPECT_EQ(result.status, 0);
    EXPECT_THAT(result.out, HasSubstr("behind-bezel"));
    EXPECT_THAT(result.out, HasSubstr("waiver-unused"));
}

TEST_F(CheckCommand, SuggestsTheRuleThatWasMeant) {
    const Outcome result = run("check --explain tuch-size");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err,
                HasSubstr("there is no rule \"tuch-size\", did you mean \"touch-size\"?"));
    EXPECT_THAT(result.out, IsEmpty());
}

TEST_F(CheckCommand, CuresALayoutAndLeavesEveryOtherByte) {
    write("dial.json", hidden_by_two_rows);
    ASSERT_EQ(run("check dial.json").status, 1);
    const Outcome result = run("check --cure dial.json");
    EXPECT_EQ(result.status, 0) << result.out << result.err;
    EXPECT_THAT(result.out, HasSubstr("cured: /pages/0/items/0/at: [8, 0] becomes [8, 2]\n"));
    EXPECT_THAT(result.out, HasSubstr("dial.json: 1 cured, 4 left\n"));
    EXPECT_THAT(result.out, EndsWith("0 must, 0 should, 4 note\n"));
    EXPECT_EQ(content(folder_ / "dial.json"),
              replaced(hidden_by_two_rows, "\"at\": [8,  0]", "\"at\": [8, 2]"));
}

TEST_F(CheckCommand, CuresIntoAnotherFile) {
    write("dial.json", hidden_by_two_rows);
    EXPECT_EQ(run("check --cure dial.json -o cured.json").status, 0);
    EXPECT_EQ(content(folder_ / "dial.json"), hidden_by_two_rows);
    EXPECT_THAT(content(folder_ / "cured.json"), HasSubstr("\"at\": [8, 2]"));
    const Outcome piped = run("check --cure - -o - < dial.json");
    EXPECT_EQ(piped.out, content(folder_ / "cured.json"));
    EXPECT_THAT(piped.err, HasSubstr("1 cured, 4 left"));
}

TEST_F(CheckCommand, NeverCuresIntoANewMust) {
    const std::string in_the_way =
        R"("ink": "ink"},
    {"kind": "frame", "at": [0, 49], "size": [320, 20], "ink": "ink", "fill": "ground"})";
    const std::string text = replaced(hidden_by_two_rows, "\"ink\": \"ink\"}\n", in_the_way + "\n");
    write("dial.json", text);
    const Outcome result = run("check --cure dial.json");
    EXPECT_EQ(result.status, 1);
    EXPECT_THAT(result.out, HasSubstr("not cured: then "));
    EXPECT_THAT(result.out, HasSubstr("[overlap]"));
    EXPECT_EQ(content(folder_ / "dial.json"), text);
}

TEST_F(CheckCommand, LeavesAMistakenLayoutAlone) {
    const std::string text = replaced(hidden_by_two_rows, "\"title\"", "\"titel\"");
    write("dial.json", text);
    const Outcome result = run("check --cure dial.json -o cured.json");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("dial.json:2:3: error: "));
    EXPECT_EQ(content(folder_ / "dial.json"), text);
    EXPECT_FALSE(fs::exists(folder_ / "cured.json"));
}

TEST_F(CheckCommand, SaysWhatIsWrongWithItsOptions) {
    write("dial.json", hidden_by_two_rows);
    struct Row {
        const char* arguments;
        const char* says;
    };
    const Row rows[] = {
        {"check", "LAYOUT is required"},
        {"check --cure", "LAYOUT is required"},
        {"check dial.json -o other.json", "--cure"},
        {"check --cure - < dial.json", "standard input cannot be cured in place"},
        {"check --cure dial.json dial.json -o other.json", "takes one layout, found are 2"},
        {"check --lines --json dial.json", "--json"},
        {"check --lines --grouped dial.json", "--lines"},
        {"check --cure dial.json -o no/such/folder.json", "cannot write"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.arguments);
        const Outcome result = run(row.arguments);
        EXPECT_EQ(result.status, 2);
        EXPECT_THAT(result.err, HasSubstr(row.says));
    }
    EXPECT_EQ(content(folder_ / "dial.json"), hidden_by_two_rows);
}

TEST_F(CheckCommand, PutsOneFindingOnALineWhereNobodyReads) {
    const Outcome result = run("check '" + crowded + "'", "TERM=xterm");
    EXPECT_THAT(result.out, HasSubstr("crowded.json:72:9: must: "));
    EXPECT_THAT(result.out, Not(HasSubstr("\x1b")));
    EXPECT_EQ(run("check --lines '" + crowded + "'").out, result.out);
    const Outcome grouped = run("check --grouped '" + crowded + "'", "TERM=xterm");
    EXPECT_THAT(grouped.out, HasSubstr("\nmust\n  inside-glass  Every item lies on the glass.\n"));
    EXPECT_THAT(grouped.out, Not(HasSubstr("\x1b")));
}

TEST(GroupedFindings, StandBySeverityThenByRuleWithTheirPlace) {
    Report report{.file = "dial.json",
                  .findings = {finding(Severity::note, "touch-spacing", 7, "a gap is small"),
                               finding(Severity::must, "behind-bezel", 112, "hidden"),
                               finding(Severity::must, "inside-glass", 5, "out"),
                               finding(Severity::must, "behind-bezel", 12, "hidden as well")}};
    report.findings[0].waived = "used with a stylus";
    EXPECT_EQ(grouped_findings({&report, 1}, {.width = 80, .colour = false}),
              "dial.json  3 must, 1 waived\n"
              "\n"
              "must\n"
              "  inside-glass  Every item lies on the glass.\n"
              "    5:9    out\n"
              "\n"
              "  behind-bezel  No pixel of an item is hidden by the opening (must), nor by the\n"
              "    bezel's depth along the line of sight (should).\n"
              "    112:9  hidden\n"
              "    12:9   hidden as well\n"
              "\n"
              "waived\n"
              "  touch-spacing  A key under 6.35 mm keeps a circle of that diameter clear of\n"
              "    its neighbours (must); gaps of 3 mm are advised between keys under 9.6 mm\n"
              "    (note).\n"
              "    7:9  a gap is small\n"
              "         accepted: used with a stylus\n");
}

TEST(GroupedFindings, SayThatThereIsNothing) {
    const Report report{.file = "dial.json", .findings = {}};
    EXPECT_EQ(grouped_findings({&report, 1}, {}), "dial.json  nothing found\n");
}

TEST(GroupedFindings, AreColouredOnlyWhenAsked) {
    const Report report{.file = "dial.json",
                        .findings = {finding(Severity::must, "inside-glass", 5, "out")}};
    const std::string plain = grouped_findings({&report, 1}, {.width = 80, .colour = false});
    std::string coloured = grouped_findings({&report, 1}, {.width = 80, .colour = true});
    EXPECT_THAT(coloured, HasSubstr("\x1b[1;31mmust\x1b[0m\n"));
    // Without its escapes the text is the same.
    for (std::size_t at; (at = coloured.find('\x1b')) != std::string::npos;)
        coloured.erase(at, coloured.find('m', at) - at + 1);
    EXPECT_EQ(coloured, plain);
}

}  // namespace
}  // namespace dialplate

// dialplate emit, as it is run: exit status, what goes where, two directories alike.
#include "tests/commands/program.hpp"

#include <gmock/gmock.h>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <string>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

const std::string trail = "'" DIALPLATE_TREE "/layouts/trail-cw.json'";

class EmitCommand : public Program {
protected:
    [[nodiscard]] Outcome emitted(const std::string& rest) { return run("emit " + rest); }
};

TEST_F(EmitCommand, WritesTheSameBytesWhereverItIsTold) {
    ASSERT_EQ(emitted(trail + " -o a").status, 0);
    const Outcome second = emitted(trail + " -o deep/b");
    EXPECT_EQ(second.status, 0);
    EXPECT_THAT(second.err, IsEmpty());
    const int same = std::system(
        ("diff -r '" + folder_.string() + "/a' '" + folder_.string() + "/deep/b' >/dev/null")
            .c_str());
    EXPECT_EQ(same, 0);
}

TEST_F(EmitCommand, ReportsInJson) {
    const Outcome ran = emitted(trail + " -o d --json --example own-driver");
    EXPECT_EQ(ran.status, 0);
    const auto report = nlohmann::json::parse(ran.out);
    EXPECT_EQ(report["example"], "own-driver");
    EXPECT_THAT(report["written"], Contains("own_display.hpp"));
    EXPECT_EQ(report["files"].size(), report["written"].size());
    EXPECT_TRUE(fs::exists(folder_ / "d" / report["sketch"].get<std::string>()));
}

TEST_F(EmitCommand, SaysWhatStandsInItsWay) {
    fs::create_directories(folder_ / "full");
    std::ofstream(folder_ / "full/notes.txt") << "mine";
    struct Row {
        std::string arguments;
        int status;
        const char* says;
    };
    const Row rows[] = {
        {trail + " -o full", 2, "notes.txt"},
        {"'" + crowded + "' -o c", 1, "places at most 32767 in one object"},
        {"missing.json -o m", 2, "no such file"},
        {trail, 2, "--output"},
        {trail + " -o -", 2, "directory"},
        {trail + " -o e --example another", 2, "--example"},
        {trail + " -o full/notes.txt", 2, "notes.txt"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.arguments);
        const Outcome ran = emitted(row.arguments);
        EXPECT_EQ(ran.status, row.status);
        EXPECT_THAT(ran.out, IsEmpty());
        EXPECT_THAT(ran.err, HasSubstr(row.says));
    }
    for (const char* none : {"c", "m", "e"})
        EXPECT_FALSE(fs::exists(folder_ / none)) << none;
    EXPECT_EQ(emitted(trail + " -o full --force").status, 0);
    EXPECT_EQ(content(folder_ / "full/notes.txt"), "mine");
}

}  // namespace
}  // namespace dialplate

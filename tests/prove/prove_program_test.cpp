// `dialplate prove` as people and scripts run it.
#include "tests/prove/small_layout.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <sys/wait.h>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::MatchesRegex;
using testing::Not;
using testing::StartsWith;

struct Outcome {
    int status = -1;
    std::string out, err;
};

std::string content(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    std::stringstream out;
    out << in.rdbuf();
    return out.str();
}

class ProveCommand : public testing::Test {
protected:
    ProveCommand() {
        const auto* info = testing::UnitTest::GetInstance()->current_test_info();
        folder_ = fs::path(DIALPLATE_OUT) / (std::string{"prove."} + info->name());
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    ~ProveCommand() override { fs::remove_all(folder_); }

    /// @param environment  Assignments for the shell.
    Outcome run(const std::string& rest,
                const std::string& environment = "",
                const std::string& program = DIALPLATE_PROGRAM) {
        const std::string out = (folder_ / "out").string(), err = (folder_ / "err").string();
        const std::string command = "cd '" + folder_.string() + "' && " + environment + " '" +
                                    program + "' prove " + rest + " >'" + out + "' 2>'" + err + "'";
        const int status = std::system(command.c_str());
        return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, content(out), content(err)};
    }

    void write(const std::string& name, const std::string& text) {
        std::ofstream(folder_ / name, std::ios::binary) << text;
    }

    fs::path folder_;
};

constexpr const char* quick = " --tuning-steps 2 --random-steps 5 ";

TEST_F(ProveCommand, PrintsOneLineALayoutAndPassesSchemasBy) {
    write("a.json", small_document("spi"));
    write("longer name.json", small_document("parallel8"));
    write("a.schema.json", R"({"$schema": "http://json-schema.org/draft-07/schema#"})");
    const Outcome result = run(std::string(quick) + "*.json");
    EXPECT_EQ(result.status, 0);
    EXPECT_THAT(result.out,
                MatchesRegex("a.json            ok  [^\n]*\nlonger name.json  ok  [^\n]*\n"));
    EXPECT_THAT(result.err, HasSubstr("a.schema.json is a JSON Schema and no layout: skipped"));
    EXPECT_EQ(run(std::string(quick) + "a.schema.json").status, 2);
}

TEST_F(ProveCommand, SaysWhatDoesNotFitAndWhatToDrop) {
    write("full.json",
          small_document("spi", {{R"("bus": {)", R"("taken": {"flash": 32000}, "bus": {)"}}));
    const Outcome result = run(std::string(quick) + "full.json");
    EXPECT_EQ(result.status, 1);
    EXPECT_THAT(result.out, StartsWith("full.json  FAILED  "));
    // 32768 - 512 - 32000 = 256
    EXPECT_THAT(result.out,
                HasSubstr("32768 less 512 for the boot loader and 32000 taken leave 256, "));
    EXPECT_THAT(result.out, HasSubstr("to drop or to make smaller: face \"lit\" "));
}

// Source: the microcontroller's figures in layouts/parts/mcus.json, and crowded's two great pictures.
TEST_F(ProveCommand, RefusesAnImageThatTheCompilerCannotPlace) {
    const Outcome result = run("'" DIALPLATE_TREE "/layouts/crowded.json'");
    EXPECT_EQ(result.status, 1);
    EXPECT_EQ(std::count(result.out.begin(), result.out.end(), '\n'), 1);
    EXPECT_THAT(result.out, HasSubstr("places at most 32767 in one object"));
    EXPECT_THAT(result.out, HasSubstr("picture \"waterfall-night.png\""));
    EXPECT_THAT(result.out, HasSubstr("by the ledger, "));
}

TEST_F(ProveCommand, PointsAtTheMistakeInAPlay) {
    write("a.json", small_document("spi"));
    write("steps.json", "{\"steps\": [\n  {\"tab\": \"up\"}\n]}\n");
    const Outcome result = run("a.json --play steps.json");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("steps.json:2:4: error: "));
    EXPECT_THAT(result.err, HasSubstr("did you mean \"tap\"?"));
    EXPECT_THAT(result.out, IsEmpty());
    // A key of another page is found out before anything is compiled.
    write("steps.json", "{\"steps\": [\n  {\"tap\": \"back\"}\n]}\n");
    const Outcome away = run("a.json --play steps.json");
    EXPECT_EQ(away.status, 2);
    EXPECT_THAT(away.err, HasSubstr("steps.json:2:11: error: item \"back\" is not on the page"));
}

TEST_F(ProveCommand, ReportsAsJsonWithTheMembersOfTheContract) {
    write("a.json", small_document("spi"));
    const Outcome result = run(std::string(quick) + "--json a.json");
    EXPECT_EQ(result.status, 0);
    const auto json = nlohmann::json::parse(result.out, nullptr, false);
    ASSERT_TRUE(json.is_object());
    for (const char* member : {"toolchain",
                               "flash",
                               "ram",
                               "frames",
                               "pixels_different",
                               "bus_bytes_different",
                               "bus_faults",
                               "time",
                               "ok"}) {
        EXPECT_TRUE(json.contains(member)) << member;
    }
    for (const char* member : {"predicted", "linked"})
        EXPECT_TRUE(json["flash"][member].is_number()) << member;
    for (const char* member : {"predicted", "measured"})
        EXPECT_TRUE(json["ram"][member].is_number()) << member;
    ASSERT_FALSE(json["time"].empty());
    for (const char* member : {"event", "predicted", "measured"})
        EXPECT_TRUE(json["time"][0].contains(member)) << member;
    EXPECT_EQ(json["ok"], true);
    EXPECT_EQ(json["pixels_different"], 0);
}

TEST_F(ProveCommand, NamesThePackageWithoutTheCompiler) {
    write("a.json", small_document("spi"));
    const Outcome result = run("a.json", "PATH=/nowhere");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("install the packages gcc-avr and avr-libc"));
    EXPECT_EQ(std::count(result.err.begin(), result.err.end(), '\n'), 1);
}

TEST_F(ProveCommand, NamesThePackagesWhereTheProvingProgramWasNotBuilt) {
    write("a.json", small_document("spi"));
    const fs::path alone = folder_ / "dialplate";
    fs::copy_file(DIALPLATE_PROGRAM, alone);
    const Outcome result = run("a.json", "", alone.string());
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("gcc-avr, avr-libc and libsimavr-dev"));
    EXPECT_EQ(std::count(result.err.begin(), result.err.end(), '\n'), 1);
}

TEST_F(ProveCommand, HelpsUnderItsOwnName) {
    const Outcome result = run("--help");
    EXPECT_EQ(result.status, 0);
    EXPECT_THAT(result.out, HasSubstr("Usage: dialplate prove "));
    EXPECT_THAT(result.out, Not(HasSubstr("dialplate-prove ")));
    EXPECT_EQ(run("--jsno a.json").status, 2);
    EXPECT_EQ(run("").status, 2);
}

}  // namespace
}  // namespace dialplate

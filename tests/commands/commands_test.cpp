// Exit status, what goes where, files.
#include "sim/commands/whole_file.hpp"
#include "tests/commands/program.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <sys/stat.h>
#include <sys/wait.h>
#include <vector>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::StartsWith;

TEST_F(Program, SaysWhatItTakesAndExitsWithTwoOnWrongUsage) {
    struct Row {
        const char* arguments;
        const char* says;
    };
    const Row rows[] = {
        {"cost", "LAYOUT is required"},
        {"shot x.json", "--output is required"},
        {"faces x.ttf", "--size is required"},
        {"cost --jsno x.json", "--jsno"},
        {"chekc x.json", "did you mean \"check\"?"},
        {"shot x.json -o y.png --zoom 0", "--zoom"},
        {"check --json --sarif x.json", "--sarif"},
        {"faces --size 24,huge x.ttf", "huge"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.arguments);
        const Outcome result = run(row.arguments);
        EXPECT_EQ(result.status, 2);
        EXPECT_THAT(result.err, HasSubstr(row.says));
        EXPECT_THAT(result.out, IsEmpty());
    }
}

TEST_F(Program, HelpGoesToStandardOutput) {
    for (const char* arguments : {"--help", "cost --help", "shot --help"}) {
        SCOPED_TRACE(arguments);
        const Outcome result = run(arguments);
        EXPECT_EQ(result.status, 0);
        EXPECT_THAT(result.out, HasSubstr("Usage"));
        EXPECT_THAT(result.err, IsEmpty());
    }
}

TEST_F(Program, MistakesInALayoutGoToStandardErrorWithTheirPlace) {
    write("broken.json", "{\n  \"titel\": 5\n}\n");
    for (const char* command :
         {"check broken.json", "cost broken.json", "shot broken.json -o a.png"}) {
        SCOPED_TRACE(command);
        const Outcome result = run(command);
        EXPECT_EQ(result.status, 2);
        EXPECT_THAT(result.err, HasSubstr("broken.json:2:3: error: "));
        EXPECT_THAT(result.out, IsEmpty());
    }
    EXPECT_FALSE(fs::exists(folder_ / "a.png"));
}

TEST_F(Program, AMissingFileIsUnusableInput) {
    const Outcome result = run("cost nowhere.json");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("nowhere.json"));
}

TEST_F(Program, ChecksTheFirstExampleWithoutAMust) {
    const Outcome result = run("check '" + coast + "'");
    EXPECT_EQ(result.status, 0) << result.out;
    EXPECT_THAT(result.err, IsEmpty());
    EXPECT_THAT(result.out, HasSubstr("0 must"));
}

TEST_F(Program, FindsFaultWithTheCrowdedExample) {
    const Outcome result = run("check --json '" + crowded + "'");
    EXPECT_EQ(result.status, 1);
    const auto json = nlohmann::json::parse(result.out);
    EXPECT_GT(json["counts"]["must"], 0);
    for (const char* name : {"rule",
                             "severity",
                             "item",
                             "line",
                             "column",
                             "measured",
                             "required",
                             "unit",
                             "message",
                             "source"}) {
        EXPECT_TRUE(json["findings"][0].contains(name)) << name;
    }
}

TEST_F(Program, WritesSarif) {
    const Outcome result = run("check --sarif '" + crowded + "'");
    EXPECT_EQ(nlohmann::json::parse(result.out)["version"], "2.1.0");
}

TEST_F(Program, CostsAsJsonUnderTheAgreedNames) {
    const Outcome result = run("cost --json '" + coast + "'");
    ASSERT_EQ(result.status, 0) << result.err;
    const auto json = nlohmann::json::parse(result.out);
    EXPECT_EQ(json["mcu"], "ATmega328P");
    const auto& flash = json["flash"];
    for (const char* name : {"capacity",
                             "taken",
                             "engine",
                             "driver",
                             "faces",
                             "pictures",
                             "pages",
                             "texts",
                             "image",
                             "total",
                             "left"}) {
        EXPECT_TRUE(flash.contains(name)) << name;
    }
    for (const char* name : {"engine", "stack", "total", "left"}) {
        EXPECT_TRUE(json["ram"].contains(name)) << name;
    }
    for (const char* name : {"name", "glyphs", "packing", "bytes"}) {
        EXPECT_TRUE(flash["faces"][0].contains(name)) << name;
    }
    for (const char* name : {"event", "bus_bytes", "cycles", "ms"}) {
        EXPECT_TRUE(json["time"][0].contains(name)) << name;
    }
}

TEST_F(Program, SeveralLayoutsGiveAnArrayInTheirOrder) {
    const Outcome result = run("cost --json '" + coast + "' '" + coast + "'");
    const auto json = nlohmann::json::parse(result.out);
    ASSERT_EQ(json.size(), 2U);
    EXPECT_EQ(json[0], json[1]);
}

TEST_F(Program, ReadsALayoutFromStandardInput) {
    const Outcome piped = run("cost --json - < '" + coast + "'");
    EXPECT_EQ(piped.status, 0) << piped.err;
    EXPECT_EQ(nlohmann::json::parse(piped.out)["file"], "-");
}

TEST_F(Program, PlainTextHasNoEscapesAndTheAccountOfEverything) {
    const Outcome result = run("cost '" + coast + "'", "TERM=xterm");
    EXPECT_THAT(result.out, Not(HasSubstr("\x1b")));
    EXPECT_THAT(result.out, HasSubstr("tuning step"));
    EXPECT_THAT(result.out, HasSubstr("left"));
}

TEST_F(Program, PhotographsTheGlassAtEveryZoom) {
    struct Row {
        int zoom;
        int width, height;
    };
    for (const Row& row : {Row{1, 320, 240}, Row{3, 960, 720}}) {
        const Outcome result =
            run("shot '" + coast + "' -o a.png --zoom " + std::to_string(row.zoom));
        ASSERT_EQ(result.status, 0) << result.err;
        EXPECT_EQ(size_of_png(content(folder_ / "a.png")), std::pair(row.width, row.height));
    }
    const Outcome piped = run("shot '" + coast + "' -o -");
    EXPECT_EQ(size_of_png(piped.out), std::pair(320, 240));
    EXPECT_THAT(piped.err, IsEmpty());
}

TEST_F(Program, ValuesAndPlaysChangeThePicture) {
    write("play.json", R"({"steps": [{"turn": 7}]})");
    const std::string plain = run("shot '" + coast + "' -o -").out;
    EXPECT_EQ(run("shot '" + coast + "' -o -").out, plain) << "the same input gives the same bytes";
    EXPECT_NE(run("shot '" + coast + "' -o - --set frequency=14195000").out, plain);
    EXPECT_NE(run("shot '" + coast + "' -o - --play play.json").out, plain);
}

TEST_F(Program, NothingIsWrittenWhenAWishCannotBeMet) {
    write("a.png", "old");
    write("play.json", "{\"steps\": [\n {\"trun\": 7}]}");
    struct Row {
        const char* option;
        const char* says;
    };
    const Row rows[] = {
        {"--page mian", "did you mean \"main\"?"},
        {"--set freqency=1", "did you mean \"frequency\"?"},
        {"--palette nosuch", "there is no palette \"nosuch\""},
        {"--play play.json", "play.json:2:3: error: "},
        {"--play nosuch.json", "nosuch.json"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(row.option);
        const Outcome result = run("shot '" + coast + "' -o a.png " + row.option);
        EXPECT_EQ(result.status, 2);
        EXPECT_THAT(result.err, HasSubstr(row.says));
        EXPECT_EQ(content(folder_ / "a.png"), "old");
    }
}

TEST_F(Program, WeighsFacesAtEverySize) {
    const Outcome result =
        run("faces figures24.bdf legend9.bdf --size 9,24 --json --chars 0123456789");
    const auto json = nlohmann::json::parse(result.out);
    for (const auto& face : json["faces"]) {
        EXPECT_EQ(face["glyphs"], 10);
        EXPECT_EQ(face["packings"].size(), 3U);
        EXPECT_GT(face["packings"][0]["bytes"], 0);
    }
}

TEST_F(Program, WeighsSetsOfCharactersAndSaysHowLargeTheyAreAndHowLongADigitTakes) {
    const Outcome result =
        run("faces DejaVuSans-Bold.ttf --size 24,48 --chars 0123456789 --chars kHz --json "
            "--distance 600 "
            "--display 2.8in-ILI9341 --picture sheet.png");
    ASSERT_EQ(result.status, 0) << result.err;
    const auto json = nlohmann::json::parse(result.out);
    ASSERT_EQ(json["faces"].size(), 4U);
    const auto& large = json["faces"][2];
    EXPECT_EQ(large["size"], 48);
    EXPECT_EQ(large["set"], 1);
    // 35 rows (DejaVu's capitals are 0.729 em) of 57.6 mm / 320 at 600 mm.
    EXPECT_NEAR(large["arcmin"], 35 * 0.18 / 600 * 3437.75, 0.1);
    // 8 MHz, 2 bytes a pixel: the bus alone takes 0.002 ms each for some 33 x 37 of them.
    EXPECT_GT(large["packings"][2]["digit_ms"], 0.002 * 30 * 37);
    EXPECT_LT(large["packings"][2]["digit_ms"], 3 * 0.002 * 36 * 37);
    EXPECT_TRUE(json["faces"][1]["packings"][0]["digit_ms"].is_null()) << "no digits, no time";
    EXPECT_THAT(content(folder_ / "sheet.png"), StartsWith("\x89PNG"));
}

TEST_F(Program, WeighsOutlinesInFourTonesAsWell) {
    const Outcome result =
        run("faces DejaVuSans-Bold.ttf figures24.bdf --size 48 --chars 0123456789 --smooth --json "
            "--display 2.8in-ILI9341 --picture smooth.png");
    ASSERT_EQ(result.status, 0) << result.err;
    const auto json = nlohmann::json::parse(result.out);
    ASSERT_EQ(json["faces"].size(), 3U) << "a BDF face has no tones";
    const auto &sharp = json["faces"][0], &smooth = json["faces"][1];
    EXPECT_EQ(sharp["smooth"], false);
    EXPECT_EQ(smooth["smooth"], true);
    EXPECT_EQ(smooth["cropped"], sharp["cropped"]) << "one yardstick for both";
    EXPECT_EQ(smooth["packings"][1]["bytes"], 0) << "no runs in tones";
    EXPECT_GT(smooth["packings"][2]["bytes"], sharp["packings"][2]["bytes"]);
    EXPECT_GT(smooth["packings"][2]["digit_ms"], sharp["packings"][2]["digit_ms"]);
}

TEST_F(Program, TellsBytesAgainstMilliseconds) {
    const Outcome result = run("cost --packings --json '" + coast + "'");
    ASSERT_EQ(result.status, 0) << result.err;
    const auto json = nlohmann::json::parse(result.out);
    ASSERT_FALSE(json["packings"].empty());
    bool timed = false;
    for (const auto& face : json["packings"]) {
        int chosen = 0;
        for (const auto& way : face["ways"]) {
            chosen += way["chosen"].get<bool>() ? 1 : 0;
            timed = timed || way.contains("digit_ms");
            if (way["chosen"].get<bool>()) {
                EXPECT_EQ(way["flash"], json["flash"]["total"]);
            }
        }
        EXPECT_EQ(chosen, 1) << face["face"];
    }
    EXPECT_TRUE(timed);
    EXPECT_THAT(run("cost --packings '" + coast + "'").out,
                HasSubstr("Bytes against milliseconds"));
}

TEST_F(Program, NamesTheDisplaysWhenThereIsNoneOfThatName) {
    const Outcome result = run("faces DejaVuSans.ttf --size 24 --display 2.8in-ILI9314");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("did you mean \"2.8in-ILI9341\"?"));
}

TEST_F(Program, FitsALayoutAndLeavesItsAuthorsLinesAlone) {
    std::string text = content(coast);
    const std::string figures = R"("figures": {"file": "figures24.bdf", "size": 24},)";
    const std::size_t at = text.find(figures);
    ASSERT_NE(at, std::string::npos);
    text.replace(
        at,
        figures.size(),
        R"("figures": {"file": "DejaVuSans.ttf" ,  "size": 24, "may": {"size": [18, 26]}},)");
    write("wide.json", text);
    const Outcome enough = run("fit wide.json --flash 20000 -o new.json");
    EXPECT_EQ(enough.status, 0) << enough.err;
    EXPECT_THAT(enough.out, HasSubstr("Chosen: "));
    const std::string fitted = content(folder_ / "new.json");
    EXPECT_EQ(fitted.substr(0, at), text.substr(0, at));
    EXPECT_THAT(fitted, HasSubstr(R"("file": "DejaVuSans.ttf" ,  "size": )"));

    const Outcome little = run("fit wide.json --flash 5000 -o none.json");
    EXPECT_EQ(little.status, 1);
    EXPECT_THAT(little.out, HasSubstr("Nothing fits. The least is "));
    EXPECT_FALSE(fs::exists(folder_ / "none.json"));

    const Outcome unknown = run("fit wide.json --flash 5000 --keep dail");
    EXPECT_EQ(unknown.status, 2);
    EXPECT_THAT(unknown.err, HasSubstr("its faces are dial, figures, legend"));
}

TEST_F(Program, AMissingFontIsUnusableInput) {
    const Outcome result = run("faces nosuch.ttf --size 20");
    EXPECT_EQ(result.status, 2);
    EXPECT_THAT(result.err, HasSubstr("there is no font file \"nosuch.ttf\""));
}

std::span<const std::uint8_t> bytes_of(const std::string& text) {
    return {reinterpret_cast<const std::uint8_t*>(text.data()), text.size()};
}

using WholeFile = Program;

TEST_F(WholeFile, ReplacesAFileAndKeepsItsPermissions) {
    const fs::path file = write("a", "old");
    ::chmod(file.c_str(), 0640);
    EXPECT_EQ(write_whole(file.string(), bytes_of("new")), "");
    EXPECT_EQ(content(file), "new");
    struct stat status {};
    ASSERT_EQ(::stat(file.c_str(), &status), 0);
    EXPECT_EQ(status.st_mode & 0777U, 0640U);
}

TEST_F(WholeFile, FollowsALinkAndLeavesItALink) {
    const fs::path file = write("a", "old");
    fs::create_symlink(file, folder_ / "link");
    EXPECT_EQ(write_whole((folder_ / "link").string(), bytes_of("new")), "");
    EXPECT_TRUE(fs::is_symlink(folder_ / "link"));
    EXPECT_EQ(content(file), "new");
}

TEST_F(WholeFile, LeavesNoDraftBehindWhenItCannotWrite) {
    EXPECT_THAT(write_whole((folder_ / "no" / "a").string(), bytes_of("new")),
                StartsWith("cannot write"));
    EXPECT_THAT(write_whole(folder_.string(), bytes_of("new")), HasSubstr("directory"));
    for (const auto& entry : fs::directory_iterator(folder_)) {
        ADD_FAILURE() << entry.path();
    }
}

TEST_F(WholeFile, WritesToADeviceWithoutReplacingIt) {
    EXPECT_EQ(write_whole("/dev/null", bytes_of("new")), "");
    EXPECT_TRUE(fs::is_character_file("/dev/null"));
}

}  // namespace
}  // namespace dialplate

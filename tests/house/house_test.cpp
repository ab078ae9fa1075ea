#include "tests/house/include_direction.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>

namespace dialplate {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::IsEmpty;

std::vector<std::string> lines_of(const fs::path& tree) {
    std::vector<std::string> lines;
    for (const StrayInclude& stray : stray_includes(tree))
        lines.push_back(gnu_line(stray));
    return lines;
}

/// A small house on disk, with one file whose includes are under test.
class PlantedHouse : public testing::Test {
protected:
    void SetUp() override {
        // A folder for each test: they may run side by side.
        const testing::TestInfo* test = testing::UnitTest::GetInstance()->current_test_info();
        tree_ = fs::path{DIALPLATE_OUT} / "planted_house" / test->name();
        fs::remove_all(tree_);
        for (const char* header : {"ui/screen.hpp",
                                   "ui/image_format.hpp",
                                   "fonts/face.hpp",
                                   "sim/layout/layout.hpp",
                                   "sim/display/controller.hpp",
                                   "sim/ledger/ledger.hpp",
                                   "sim/desk/desk.hpp",
                                   "sim/prove/prove.hpp"})
            plant(header, "#pragma once\n");
    }
    void TearDown() override { fs::remove_all(tree_); }

    void plant(const std::string& file, const std::string& text) {
        fs::create_directories((tree_ / file).parent_path());
        std::ofstream(tree_ / file) << text;
    }
    fs::path tree_;
};

TEST(IncludeDirection, EveryIncludeOfTheTreePointsDownwards) {
    EXPECT_THAT(lines_of(DIALPLATE_TREE), IsEmpty());
}

TEST_F(PlantedHouse, IsCleanBeforeAnythingIsPlanted) {
    EXPECT_THAT(lines_of(tree_), IsEmpty());
}

TEST_F(PlantedHouse, NamesFileAndLineOfAnIncludeThatPointsUpwards) {
    plant("sim/layout/reader.cpp",
          "#include \"sim/layout/layout.hpp\"\n"
          "\n"
          "#  include \"sim/desk/desk.hpp\"  // wrong\n");
    EXPECT_THAT(lines_of(tree_),
                ElementsAre("sim/layout/reader.cpp:3: error: sim/layout/ may not see "
                            "\"sim/desk/desk.hpp\" [include-direction]"));
}

TEST_F(PlantedHouse, OverlooksWhatStandsInATextButNotWhatFollowsIt) {
    plant("sim/layout/reader.cpp",
          "const char* sketch = R\"x(\n"
          "#include \"sim/desk/desk.hpp\"\n"
          ")\" \n"
          "#include <Arduino.h>\n"
          ")x\", *two = R\"(a)\";\n"
          "#include <SDL.h>\n");
    EXPECT_THAT(lines_of(tree_),
                ElementsAre("sim/layout/reader.cpp:6: error: <SDL.h> is no business of sim/layout/ "
                            "[include-direction]"));
}

TEST_F(PlantedHouse, JudgesEveryPairOfRoomsByTheFloors) {
    struct Row {
        const char* file;
        const char* target;
        bool allowed;
        const char* source;
    };
    const Row rows[] = {
        {"ui/screen.cpp", "\"fonts/face.hpp\"", false, "ui knows nobody"},
        {"ui/mcu/pins.hpp", "\"ui/screen.hpp\"", true, "one room, several folders"},
        {"ui/screen.cpp", "<stdint.h>", true, "the two headers that a microcontroller has"},
        {"ui/screen.cpp", "<avr/pgmspace.h>", true, "flash is another address space"},
        {"ui/screen.cpp", "<cstdint>", false, "avr-g++ 5.4 has no C++ library"},
        {"ui/screen.cpp", "<string.h>", false, "only stdint.h and stddef.h"},
        {"ui/screen.cpp", "<vector>", false, "no C++ library"},
        {"fonts/pack.cpp", "\"ui/image_format.hpp\"", true, "fonts knows the glyph format"},
        {"fonts/pack.cpp", "\"ui/screen.hpp\"", false, "and nothing else of ui"},
        {"fonts/pack.cpp", "<SDL_ttf.h>", true, "rasterising is its job"},
        {"sim/display/wire.cpp", "\"ui/screen.hpp\"", true, "display sees ui"},
        {"sim/receiver/tuning.cpp", "\"ui/screen.hpp\"", false, "receiver sees layout only"},
        {"sim/receiver/tuning.cpp", "\"sim/display/controller.hpp\"", false, "side by side"},
        {"sim/image/build.cpp", "\"sim/display/controller.hpp\"", false, "side by side"},
        {"sim/check/contrast.cpp", "\"sim/ledger/ledger.hpp\"", true, "check stands on ledger"},
        {"sim/ledger/ledger.cpp", "\"sim/desk/desk.hpp\"", false, "desk stands on ledger"},
        {"sim/ledger/ledger.cpp", "<SDL.h>", false, "input and output at the edge"},
        {"sim/ledger/ledger.cpp", "<nlohmann/json.hpp>", false, "values in, values out"},
        {"sim/main.cpp", "\"sim/desk/desk.hpp\"", true, "main is on top"},
        {"sim/commands/check.cpp", "\"sim/ledger/ledger.hpp\"", true, "commands belong to main"},
        {"sim/main.cpp", "\"sim/prove/prove.hpp\"", false, "the proof is a program of its own"},
        {"sim/commands/prove.cpp", "<simavr/sim_avr.h>", false, "only the proof links libsimavr"},
        {"sim/layout/reader.cpp", "\"reader.hpp\"", false, "includes are written from the top"},
        {"sim/layout/reader.cpp", "\"sim/layout/lost.hpp\"", false, "no such file"},
        {"sim/layout/reader.cpp", "<string_view>", true, "the language's own library"},
    };
    for (const Row& row : rows) {
        SCOPED_TRACE(std::string{row.file} + " includes " + row.target + ": " + row.source);
        plant(row.file, "#include " + std::string{row.target} + "\n");
        EXPECT_EQ(stray_includes(tree_).empty(), row.allowed);
        fs::remove(tree_ / row.file);
    }
}

TEST(House, TopLevelHoldsWhatTheDesignNames) {
    const std::set<std::string> named = {"CMakeLists.txt",
                                         "README.md",
                                         "DEVELOPERS.md",
                                         "LICENSE",
                                         "sim",
                                         "ui",
                                         "fonts",
                                         "tests",
                                         "layouts"};
    std::vector<std::string> others;
    for (const fs::directory_entry& entry : fs::directory_iterator(DIALPLATE_TREE)) {
        const std::string name = entry.path().filename().string();
        // Dot-files and build folders (.gitignore) are nobody's business.
        if (named.count(name) != 0 || name[0] == '.' || name.rfind("build", 0) == 0 ||
            name == "out")
            continue;
        others.push_back(name);
    }
    EXPECT_THAT(others, IsEmpty());
}

TEST(House, FileNamesSayWhatIsInside) {
    // The words that say nothing (DEVELOPERS.md, "Naming"), and capitals in names of sources.
    const std::set<std::string> empty_words = {
        "util", "utils", "helper", "helpers", "manager", "handler", "handlers", "misc", "common"};
    std::vector<std::string> poor;
    for (const char* top : {"ui", "fonts", "sim", "tests"})
        for (const fs::directory_entry& entry :
             fs::recursive_directory_iterator(fs::path{DIALPLATE_TREE} / top)) {
            const std::string ending = entry.path().extension().string();
            if (ending != ".cpp" && ending != ".hpp") continue;
            const std::string name = entry.path().stem().string();
            bool good = std::none_of(
                name.begin(), name.end(), [](unsigned char c) { return std::isupper(c) != 0; });
            for (std::size_t at = 0; at <= name.size();) {
                const std::size_t end = std::min(name.find('_', at), name.size());
                good = good && empty_words.count(name.substr(at, end - at)) == 0;
                at = end + 1;
            }
            if (!good) poor.push_back(entry.path().string());
        }
    EXPECT_THAT(poor, IsEmpty());
}

}  // namespace
}  // namespace dialplate

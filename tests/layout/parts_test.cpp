#include "sim/layout/reader.hpp"
#include "tests/layout/layout_files.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace dialplate {
namespace {

using testing::HasSubstr;

// A folder of its own with a layout that names its parts, and part files beside it.
class Parts : public testing::Test {
protected:
    void SetUp() override {
        const auto* const test = testing::UnitTest::GetInstance()->current_test_info();
        folder = std::filesystem::path(DIALPLATE_OUT) / "parts" / test->name();
        std::filesystem::remove_all(folder);
        std::filesystem::create_directories(folder / "parts");
    }
    void write(const std::string& name, const std::string& text) const {
        std::ofstream(folder / name, std::ios::binary) << text;
    }
    Reading read(const std::string& display, const std::string& mcu) const {
        return read_layout(
            "{\"title\": \"t\",\n\"display\": \"" + display + "\",\n\"mcu\": {\"part\": \"" + mcu +
                "\", \"clock_mhz\": 8},\n\"bus\": {\"kind\": \"spi\", \"clock_mhz\": 4},"
                "\n\"paints\": {\"g\": \"#000000\"}, \"pages\": [{\"name\": \"p\", "
                "\"ground\": \"g\", \"items\": []}]}",
            "x.json",
            folder.string());
    }
    std::filesystem::path folder;
};

constexpr const char* one_mcu =
    "{\"mcus\": [{\"name\": \"bench\", \"family\": \"avr\", \"flash\": 16384, \"ram\": 1024, "
    "\"clock_max_mhz\": 10}]}";

TEST_F(Parts, AreFoundByNameInTheProject) {
    const Reading reading = read("2.8in-ILI9341", "ATmega328P");
    ASSERT_TRUE(reading.layout.has_value()) << gnu_line("x.json", reading.findings.at(0));
    EXPECT_EQ(reading.layout->display.width, 240);
    EXPECT_EQ(reading.layout->display.height, 320);
    EXPECT_EQ(reading.layout->mcu.flash, Bytes{32768});  // ATmega328P data sheet: 32 KiB
    EXPECT_EQ(reading.layout->mcu.ram, Bytes{2048});     // same: 2 KiB
    EXPECT_EQ(reading.layout->clock, Hertz{8e6});
}

TEST_F(Parts, BesideTheLayoutComeFirst) {
    write("parts/mcus.json", one_mcu);
    const Reading own = read("2.8in-ILI9341", "bench");
    ASSERT_TRUE(own.layout.has_value()) << gnu_line("x.json", own.findings.at(0));
    EXPECT_EQ(own.layout->mcu.flash, Bytes{16384});
    EXPECT_TRUE(read("2.8in-ILI9341", "ATmega328P").layout.has_value()) << "the project's stay";
}

TEST_F(Parts, UnknownOnesHaveASuggestion) {
    const Reading reading = read("2.8in-ILI9314", "ATmega328");
    ASSERT_EQ(reading.findings.size(), 2u);
    EXPECT_EQ(reading.findings[0].rule, "unknown-part");
    EXPECT_EQ(reading.findings[0].place.line, 2);
    EXPECT_THAT(reading.findings[0].message, HasSubstr("did you mean \"2.8in-ILI9341\"?"));
    EXPECT_EQ(reading.findings[1].place.line, 3);
    EXPECT_THAT(reading.findings[1].message, HasSubstr("did you mean \"ATmega328P\"?"));
}

TEST_F(Parts, InABrokenFileAreReportedInThatFile) {
    write(
        "parts/mcus.json",
        "{\"mcus\": [\n  {\"name\": \"bench\", \"family\": \"avr\", \"flash\": 12, \"ram\": 1024,\n"
        "   \"clock_max\": 10}]}");
    const Reading reading = read("2.8in-ILI9341", "bench");
    EXPECT_FALSE(reading.layout.has_value());
    ASSERT_EQ(reading.findings.size(), 2u);
    const std::string file = (folder / "parts/mcus.json").string();
    EXPECT_THAT(gnu_line("x.json", reading.findings[0]),
                HasSubstr(file + ":2:47: error: \"flash\" of microcontroller \"bench\" is 12"));
    EXPECT_THAT(gnu_line("x.json", reading.findings[1]), HasSubstr(file + ":3:4: error: "));
    EXPECT_THAT(reading.findings[1].message, HasSubstr("did you mean \"clock_max_mhz\"?"));
}

TEST_F(Parts, InAFileThatIsNoJsonAreNotSaidToBeUnknown) {
    write("parts/displays.json", "{\"displays\": [");
    const Reading reading = read("no such display", "ATmega328P");
    ASSERT_EQ(reading.findings.size(), 1u);
    EXPECT_EQ(reading.findings[0].rule, "syntax");
    EXPECT_EQ(reading.findings[0].file, (folder / "parts/displays.json").string());
    EXPECT_EQ(reading.findings[0].place.column, 15);
}

}  // namespace
}  // namespace dialplate

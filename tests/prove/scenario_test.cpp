// The emitted firmware on the simulated microcontroller against the PC's engine, through whole scenarios.
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"
#include "tests/prototype/examples.hpp"
#include "ui/image_format.hpp"

#include <gtest/gtest.h>

#include <filesystem>
#include <string>

namespace dialplate {
namespace {

// One of everything that a small part can show, on a small glass.
constexpr const char* small_layout = R"({
  "title": "Small",
  "display": {
    "name": "small", "controller": "ST7735S", "width": 64, "height": 48,
    "active_width_mm": 16, "active_height_mm": 12, "memory_width": 132, "memory_height": 162,
    "turns": {
      "0": {"address_mode": 0}, "90": {"address_mode": 96},
      "180": {"address_mode": 192}, "270": {"address_mode": 160}
    }
  },
  "mcu": {"part": {"name": "ATmega328P", "family": "avr", "flash": 32768, "ram": 2048, "boot": 512,
                   "clock_max_mhz": 20}, "clock_mhz": 16},
  "bus": {"kind": "@bus@", "clock_mhz": 8},
  "paints": {"ground": "#000000", "ink": "#FFFFFF"},
  "looks": {"plain": {"idle": {"ink": "ink", "fill": "ground", "edge": "ink"},
                      "pressed": {"ink": "ground", "fill": "ink", "edge": "ink"},
                      "active": {"ink": "ink", "fill": "ground", "edge": "ink"},
                      "disabled": {"ink": "ink", "fill": "ground", "edge": "ground"}}},
  "faces": {"lit": {"segments": {"width": 5, "height": 9, "stroke": 1, "gap": 1}}},
  "values": {
    "frequency": {"type": "number", "unit": "kHz", "min": 0, "max": 99999, "start": 7100, "role": "frequency"},
    "signal": {"type": "level", "min": 0, "max": 100, "start": 30}
  },
  "pages": [
    {"name": "main", "ground": "ground", "items": [
      {"kind": "readout", "name": "dial", "at": [2, 2], "size": [40, 10], "value": "frequency", "face": "lit",
       "ink": "ink", "ground": "ground", "groups": [5]},
      {"kind": "meter", "name": "bar", "at": [2, 16], "size": [60, 6], "value": "signal", "from": 0, "to": 100,
       "bar": 4, "ink": "ink", "ground": "ground", "unlit": "ground"},
      {"kind": "key", "name": "more", "at": [2, 26], "size": [28, 18], "text": "1", "face": "lit",
       "look": "plain", "edge": 1, "tap": {"page": "other"}},
      {"kind": "key", "name": "up", "at": [34, 26], "size": [28, 18], "text": "2", "face": "lit",
       "look": "plain", "edge": 1, "repeat": true, "tap": {"step": "frequency", "by": 1}}
    ]},
    {"name": "other", "ground": "ink", "items": [
      {"kind": "key", "name": "back", "at": [2, 2], "size": [28, 18], "text": "0", "face": "lit",
       "look": "plain", "edge": 1, "tap": {"page": "main"}}
    ]}
  ]
})";

struct Ready {
    Layout layout;
    BuiltImage image;
};

Ready small(const std::string& bus) {
    std::string text = small_layout;
    text.replace(text.find("@bus@"), 5, bus);
    const Reading reading = read_layout(text, "small.json", DIALPLATE_TREE "/layouts");
    for (const Finding& f : reading.findings)
        ADD_FAILURE() << gnu_line("small.json", f);
    if (!reading.layout) return {};
    const Building building = build_image(*reading.layout);
    for (const Finding& f : building.findings)
        ADD_FAILURE() << gnu_line("small.json", f);
    if (!building.image) return {};
    return {*reading.layout, *building.image};
}

const Toolchain& toolchain() {
    static const std::optional<Toolchain> found = find_toolchain();
    EXPECT_TRUE(found) << "avr-g++ and avr-libc are needed";
    return *found;
}

// Enough to cross the greatest carries both ways; the program itself plays a thousand.
const ProofOptions short_scenario = {
    .scenario = {.tuning_steps = 80, .meter_steps = 8, .random_steps = 60, .seed = 1},
    .play = std::nullopt};
const ProofOptions unweighed = {
    .scenario = short_scenario.scenario, .play = std::nullopt, .weigh = false};

void expect_equal(const Proof& proof) {
    EXPECT_EQ(proof.refusal, "");
    EXPECT_EQ(proof.compared.trouble, "");
    EXPECT_EQ(proof.compared.bytes_different, 0);
    EXPECT_EQ(proof.compared.pixels_different, 0);
    EXPECT_EQ(proof.bus_faults(), 0);
    EXPECT_GT(proof.compared.frames, 0);
    EXPECT_TRUE(proof.ok()) << proof_details(proof);
}

class SmallLayout : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Buses,
                         SmallLayout,
                         testing::Values("spi", "spi_timed", "usart_spi", "parallel8"),
                         [](const auto& of) { return of.param; });

TEST_P(SmallLayout, IsDrawnAlikeByFirmwareAndSimulator) {
    const Ready it = small(GetParam());
    expect_equal(prove(toolchain(), it.layout, it.image, short_scenario));
}

class ExampleLayout : public testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Examples,
                         ExampleLayout,
                         testing::Values("layouts/coast-listener.json",
                                         "layouts/pocket-broadcast.json",
                                         "layouts/trail-cw.json"),
                         test_name);

TEST_P(ExampleLayout, IsDrawnAlikeByFirmwareAndSimulator) {
    const Loaded it = load_example(std::string(DIALPLATE_TREE) + '/' + GetParam());
    const Proof proof = prove(toolchain(), it.layout, it.image, short_scenario);
    expect_equal(proof);
    std::cout << proof_details(proof);
}

// The panel is woken with 01, 11, 3A 55, 36 and its mode, 29: seven bytes, 0 to 6 (ui/mcu/display_bus.hpp).
// Then a window of eleven bytes, 7 to 17, and the first pixel of the ground: its high byte is number 18.
constexpr std::int64_t first_pixel_byte = 7 + 11;

TEST(PlantedFault, InTheGroundColourIsFoundInItsFirstByte) {
    const Ready it = small("spi");
    BuiltImage spoilt = it.image;
    const std::size_t paints =
        spoilt.bytes[header::at_paints] + 256U * spoilt.bytes[header::at_paints + 1];
    // The ground is the first paint, black; in one of its two bytes the lowest bit is flipped.
    ASSERT_EQ(spoilt.bytes[paints], 0);
    ASSERT_EQ(spoilt.bytes[paints + 1], 0);
    spoilt.bytes[paints + 1] ^= 1;  // high byte: the image stores words lowest byte first
    const Proof proof =
        prove(toolchain(), it.layout, it.image, unweighed, {.image = &spoilt, .change = {}});
    EXPECT_FALSE(proof.ok());
    ASSERT_TRUE(proof.compared.first);
    EXPECT_EQ(proof.compared.first->byte, first_pixel_byte);
    EXPECT_EQ(proof.compared.first->expected, 0x00);
    EXPECT_EQ(proof.compared.first->actual, 0x01);
    EXPECT_EQ(proof.compared.first->during, "turning to page \"main\"");
    EXPECT_GT(proof.compared.pixels_different, 0);
    ASSERT_TRUE(proof.pictures);
    EXPECT_NE(proof.pictures->expected, proof.pictures->actual);
    EXPECT_EQ(proof_json(proof)["first_difference"]["byte"], first_pixel_byte);
}

TEST(PlantedFault, InTheTargetOfAKeyIsFoundWhenTheKeyIsPressed) {
    const Ready it = small("spi");
    // The same layout, but the key "more" stays on its page in the firmware.
    std::string text = small_layout;
    text.replace(text.find("@bus@"), 5, "spi");
    const std::string tap = R"("tap": {"page": "other"})";
    text.replace(text.find(tap), tap.size(), R"("tap": {"page": "main"})");
    const Reading reading = read_layout(text, "small.json", DIALPLATE_TREE "/layouts");
    ASSERT_TRUE(reading.layout);
    const Building building = build_image(*reading.layout);
    ASSERT_TRUE(building.image);
    const Proof proof = prove(
        toolchain(), it.layout, it.image, unweighed, {.image = &*building.image, .change = {}});
    EXPECT_FALSE(proof.ok());
    ASSERT_TRUE(proof.compared.first);
    EXPECT_EQ(proof.compared.first->during, "tapping key \"more\" on page \"main\"");
}

TEST(Budget, IsPartOfTheProof) {
    Ready it = small("spi");
    it.layout.taken.ram = Bytes{2048};
    const Proof proof = prove(toolchain(), it.layout, it.image, short_scenario);
    EXPECT_FALSE(proof.ok());
    EXPECT_EQ(proof.ram_room, 0);
    EXPECT_EQ(proof.compared.bytes_different, 0);
    // All that is needed is too much.
    EXPECT_NE(proof.over_budget.find("2048 less 2048 taken leave 0, " +
                                     std::to_string(proof.ram_measured) + " too many"),
              std::string::npos)
        << proof.over_budget;
}

TEST(Refusal, NamesTheMicrocontrollersThatCanBeSimulated) {
    Ready it = small("spi");
    it.layout.mcu.name = "ATmega4809";
    const Proof proof = prove(toolchain(), it.layout, it.image, short_scenario);
    EXPECT_FALSE(proof.ok());
    EXPECT_EQ(proof.refusal,
              "proofs run on the ATmega328P and the ATmega2560, not on the ATmega4809");
}

}  // namespace
}  // namespace dialplate

// The emitted firmware on the simulated microcontroller against the PC's engine, through whole scenarios.
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"
#include "tests/prove/small_layout.hpp"
#include "ui/image_format.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>

namespace dialplate {
namespace {

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
    expect_equal(prove(toolchain(), it.layout, it.image, short_scenario()));
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
        prove(toolchain(), it.layout, it.image, unweighed(), {.image = &spoilt, .change = {}});
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
    const Ready other =
        small("spi", {{R"("tap": {"page": "other"})", R"("tap": {"page": "main"})"}});
    const Proof proof =
        prove(toolchain(), it.layout, it.image, unweighed(), {.image = &other.image, .change = {}});
    EXPECT_FALSE(proof.ok());
    ASSERT_TRUE(proof.compared.first);
    EXPECT_EQ(proof.compared.first->during, "tapping key \"more\" on page \"main\"");
}

// What is wrong in one corner of the firmware's image only is found where the scenario gets to it.
TEST(PlantedFault, IsFoundInEveryCornerOfALayout) {
    using Edits = std::vector<std::pair<std::string, std::string>>;
    const Edits base = {
        {R"("looks": {)", R"("palettes": {"night": {"ink": "#800000"}}, "looks": {)"},
        {R"("unlit": "ground"})", R"("unlit": "ground", "over": {"from": 80, "ink": "ink"}})"},
        {R"("values": {)",
         R"("values": {"lock": {"type": "flag", "start": true},
                       "mode": {"type": "choice", "choices": ["1", "2", "3"]},)"},
        {R"("tap": {"page": "other"})",
         R"("tap": {"page": "other"}, "hold": {"page": "main"}, "enabled_by": "lock")"},
        {R"("tap": {"page": "main"}})",
         R"("tap": {"page": "main"}}, {"kind": "lamp", "name": "mode", "at": [2, 24], "size": [20, 14],
            "value": "mode", "face": "lit", "lit": {"ink": "ground", "fill": "ink"}})"}};
    struct Row {
        const char* what;
        std::pair<std::string, std::string> edit;
        const char* during;
    };
    const Row rows[] = {
        {"a colour of the second palette", {"#800000", "#808000"}, "drawing in palette \"night\""},
        {"the last choice of a value, on the second page",
         {R"("1", "2", "3")", R"("1", "2", "7")"},
         "setting mode to 2 on page \"other\""},
        {"what a held key does",
         {R"("hold": {"page": "main"})", R"("hold": {"page": "other"})"},
         "holding key \"more\" on page \"main\""},
        {"the upper end of a meter",
         {R"("over": {"from": 80, "ink": "ink"})", R"("over": {"from": 80, "ink": "ground"})"},
         "setting signal to "},
        {"the flag that enables a key",
         {R"("enabled_by": "lock")", R"("radius": 0)"},
         "setting lock to 0 on page \"main\""},
    };
    const Ready right = small("spi_timed", base);
    for (const Row& row : rows) {
        SCOPED_TRACE(row.what);
        std::string document = small_document("spi_timed", base);
        Edits edits = base;
        for (auto& edit : edits) {
            if (edit.second.find(row.edit.first) != std::string::npos) {
                replace_one(edit.second, row.edit.first, row.edit.second);
                document.clear();
            }
        }
        if (!document.empty()) edits.push_back(row.edit);
        const Ready wrong = small("spi_timed", edits);
        const Proof proof = prove(toolchain(),
                                  right.layout,
                                  right.image,
                                  unweighed(),
                                  {.image = &wrong.image, .change = {}});
        EXPECT_FALSE(proof.ok());
        ASSERT_TRUE(proof.compared.first) << proof_line(proof, 0) << proof_details(proof);
        EXPECT_THAT(proof.compared.first->during, testing::HasSubstr(row.during));
    }
}

TEST(Budget, IsPartOfTheProof) {
    Ready it = small("spi");
    it.layout.taken.ram = Bytes{2048};
    const Proof proof = prove(toolchain(), it.layout, it.image, short_scenario());
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
    const Proof proof = prove(toolchain(), it.layout, it.image, short_scenario());
    EXPECT_FALSE(proof.ok());
    EXPECT_EQ(proof.refusal,
              "proofs run on the ATmega328P and the ATmega2560, not on the ATmega4809");
}

}  // namespace
}  // namespace dialplate

// Proofs of layouts that nobody has seen before: the firmware of each against the simulator, byte by byte.
#include "tests/prove/random_layouts.hpp"

#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/ledger/code_size.hpp"
#include "sim/prove/proof.hpp"
#include "sim/prove/proof_report.hpp"

#include <gtest/gtest.h>

#include <map>
#include <string>

namespace dialplate {
namespace {

constexpr std::uint32_t first_seed = 1;
#ifdef __SANITIZE_ADDRESS__
constexpr bool sanitized = true;
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
constexpr bool sanitized = true;
#else
constexpr bool sanitized = false;
#endif
#else
constexpr bool sanitized = false;
#endif
// Compiling for the microcontroller takes most of the time, and the sanitizers slow down the rest.
constexpr int groups = 5, layouts_in_a_group = sanitized ? 1 : 10;

struct RandomLayout {
    Layout layout;
    BuiltImage image;
};

std::optional<RandomLayout> built(std::uint32_t seed) {
    const std::string name = "random " + std::to_string(seed);
    const Reading reading = read_layout(random_layout(seed), name, DIALPLATE_TREE "/layouts");
    for (const Finding& finding : reading.findings)
        ADD_FAILURE() << gnu_line(name, finding);
    if (!reading.layout) return std::nullopt;
    const Building building = build_image(*reading.layout);
    for (const Finding& finding : building.findings)
        ADD_FAILURE() << gnu_line(name, finding);
    if (!building.image) return std::nullopt;
    return RandomLayout{*reading.layout, *building.image};
}

class RandomLayouts : public testing::TestWithParam<int> {};
INSTANTIATE_TEST_SUITE_P(Seeds, RandomLayouts, testing::Range(0, groups));

// A seed of its own is proven by hand so: --gtest_filter=... in a build, or write random_layout(seed) to a
// file beside layouts/ and give it to `dialplate prove`.
TEST_P(RandomLayouts, AreDrawnAlikeByFirmwareAndSimulator) {
    const std::optional<Toolchain> toolchain = find_toolchain();
    ASSERT_TRUE(toolchain) << "avr-g++ and avr-libc are needed";
    for (int n = 0; n < layouts_in_a_group; ++n) {
        const std::uint32_t seed =
            first_seed + static_cast<std::uint32_t>(GetParam() * layouts_in_a_group + n);
        SCOPED_TRACE("random_layout(" + std::to_string(seed) + ')');
        const std::optional<RandomLayout> it = built(seed);
        if (!it) continue;
        const ProofOptions options = {
            .scenario = {.tuning_steps = 40, .meter_steps = 6, .random_steps = 60, .seed = seed},
            .play = std::nullopt,
            .two_boards = false,
            .weigh = n == 0};
        const Proof proof = prove(*toolchain, it->layout, it->image, options);
        EXPECT_EQ(proof.compared.bytes_different, 0);
        EXPECT_EQ(proof.compared.pixels_different, 0);
        EXPECT_EQ(proof.bus_faults(), 0);
        EXPECT_GT(proof.compared.frames, 0);
        EXPECT_TRUE(proof.ok()) << proof_line(proof, 0) << proof_details(proof);
        // The ledger's word to the builder: RAM within 64 bytes. All but the stack is certain.
        const CodeSize stack = stack_size(display_program(it->layout, it->image), it->layout.mcu);
        EXPECT_NEAR(static_cast<double>(stack.bytes.value), proof.compared.stack, 64);
        EXPECT_LE(proof.compared.stack, (stack.bytes + stack_margin(it->layout.mcu)).value);
        // And flash within 1 % and 64 bytes, on the part that was compiled for. Two programs more take their time, so
        // the first of each group stands for it.
        if (n == 0 && it->layout.mcu.name == "ATmega328P") {
            EXPECT_NEAR(static_cast<double>(proof.flash_predicted),
                        static_cast<double>(proof.flash_linked),
                        0.01 * static_cast<double>(proof.flash_linked) + 64);
        }
    }
}

// Were the generator to lose a kind, the proofs above would pass all the same.
TEST(RandomLayoutGenerator, MakesEverythingThatALayoutCanSay) {
    std::map<ItemKind, int> kinds;
    std::map<BusKind, int> buses;
    std::map<int, int> turns, scales;
    std::map<std::string, int> mcus, controllers;
    int segments = 0, palettes = 0, holds = 0, repeats = 0, tuned = 0, peaks = 0, pages = 0;
    const int all = 5 * 10;
    for (std::uint32_t seed = first_seed; seed < first_seed + all; ++seed) {
        const std::optional<RandomLayout> it = built(seed);
        if (!it) continue;
        const Layout& layout = it->layout;
        ++buses[layout.bus.kind];
        ++turns[layout.turn];
        ++mcus[layout.mcu.name];
        ++controllers[layout.display.controller];
        palettes += layout.palettes.size() > 1 ? 1 : 0;
        pages += layout.pages.size() > 1 ? 1 : 0;
        for (const Face& face : layout.faces) {
            segments += face.kind == FaceKind::segment ? 1 : 0;
            ++scales[face.scale];
        }
        for (const Page& page : layout.pages) {
            for (const Item& item : page.items) {
                ++kinds[item.kind];
                if (item.kind == ItemKind::readout) tuned += item.readout.tuning ? 1 : 0;
                if (item.kind == ItemKind::meter) peaks += item.meter.peak ? 1 : 0;
                if (item.kind != ItemKind::key) continue;
                holds += item.key.hold.kind != ActionKind::none ? 1 : 0;
                repeats += item.key.repeat ? 1 : 0;
            }
        }
    }
    EXPECT_EQ(kinds.size(), 8U);
    for (const auto& [kind, count] : kinds)
        EXPECT_GE(count, 5) << static_cast<int>(kind);
    EXPECT_EQ(buses.size(), 4U);
    EXPECT_EQ(turns.size(), 4U);
    EXPECT_EQ(mcus.size(), 2U);
    EXPECT_EQ(controllers.size(), 6U);
    EXPECT_EQ(scales.size(), 3U);
    for (const int count : {segments, palettes, holds, repeats, tuned, peaks, pages})
        EXPECT_GE(count, 5);
}

TEST(RandomLayoutGenerator, GivesTheSameDocumentForTheSameSeed) {
    EXPECT_EQ(random_layout(7), random_layout(7));
    EXPECT_NE(random_layout(7), random_layout(8));
}

}  // namespace
}  // namespace dialplate

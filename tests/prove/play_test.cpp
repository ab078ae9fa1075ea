// A proof that does the steps of a play file.
#include "sim/prototype/play.hpp"

#include "sim/prototype/prototype.hpp"
#include "sim/prove/lock_step.hpp"
#include "sim/prove/play_steps.hpp"
#include "sim/prove/proof_firmware.hpp"
#include "sim/prove/proof_report.hpp"
#include "tests/prove/small_layout.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <unistd.h>

namespace dialplate {
namespace {

using testing::HasSubstr;

constexpr const char* every_kind_of_step = R"({"steps": [
    {"tap": "up"}, {"press": "up"}, {"wait_ms": 700}, {"lift": true},
    {"press_at": [40, 30]}, {"press_at": [1, 1]}, {"lift": true},
    {"turn": 3}, {"set": {"frequency": 9999, "signal": 80}}, {"turn": 1},
    {"tap": "more"}, {"tap": "back"}, {"page": "other"}, {"palette": "night"}, {"page": "main"}
]})";

const std::vector<std::pair<std::string, std::string>> with_night = {
    {R"("looks": {)", R"("palettes": {"night": {"ink": "#800000"}}, "looks": {)"}};

std::vector<PlayStep> steps(const std::string& text, const Layout& layout) {
    const PlayReading reading = read_play(text, layout);
    for (const Finding& finding : reading.findings)
        ADD_FAILURE() << gnu_line("steps.json", finding);
    return reading.steps.value_or(std::vector<PlayStep>{});
}

TEST(PlayOnBothSides, IsProvenInPlaceOfTheScenario) {
    const Ready it = small("usart_spi", with_night);
    ProofOptions options = unweighed();
    options.play = steps(every_kind_of_step, it.layout);
    const Proof proof = prove(toolchain(), it.layout, it.image, options);
    EXPECT_TRUE(proof.ok()) << proof_details(proof);
    EXPECT_GT(proof.compared.frames, 10);
    EXPECT_TRUE(proof.time.empty());  // events are timed in the scenario
}

TEST(PlayOnBothSides, EndsWithThePictureThatAShotTakes) {
    const Ready it = small("spi", with_night);
    const std::vector<PlayStep> play = steps(every_kind_of_step, it.layout);
    Prototype prototype(it.layout, it.image);
    prototype.settle();
    ASSERT_FALSE(perform(prototype, play));

    const std::filesystem::path folder =
        std::filesystem::path(DIALPLATE_OUT) / "prove" / ("play." + std::to_string(getpid()));
    std::filesystem::remove_all(folder);
    ASSERT_TRUE(write_code(emit(it.layout, it.image, Example::driver).files, folder));
    ASSERT_EQ(build_proof_firmware(toolchain(), it.layout, it.image, folder / "proof.elf"), "");
    Board board(board_for(it.layout));
    ASSERT_FALSE(board.load(folder / "proof.elf"));
    std::filesystem::remove_all(folder);
    LockStep both(it.layout, it.image, board, sheet_of(it.layout, it.image));
    both.start();
    play_steps(both, it.layout, play);
    EXPECT_TRUE(both.going());
    EXPECT_EQ(both.actual_glass(), prototype.glass());
}

TEST(PlayOnBothSides, NamesTheStepInWhichTheyDiffer) {
    const Ready it = small("spi");
    const Ready other =
        small("spi", {{R"("tap": {"page": "other"})", R"("tap": {"page": "main"})"}});
    ProofOptions options = unweighed();
    options.play = steps(R"({"steps": [{"turn": 2}, {"tap": "more"}]})", it.layout);
    const Proof proof =
        prove(toolchain(), it.layout, it.image, options, {.image = &other.image, .change = {}});
    ASSERT_TRUE(proof.compared.first);
    EXPECT_EQ(proof.compared.first->during, "step 2 of the play, tapping \"more\"");
}

}  // namespace
}  // namespace dialplate

// The table that the ledger carries sizes over to other processors by, held against the engine as it is now.
#include "sim/ledger/measured_ratios.hpp"

#include "sim/ledger/code_size.hpp"
#include "sim/ledger/measured_sizes.hpp"
#include "tests/firmware/compiled.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace dialplate {
namespace {

constexpr PartSet all_parts{(1U << part_count) - 1};
constexpr PartSet readout_and_keys = PartSet{}
                                         .add(Part::readout)
                                         .add(Part::tuning_digit)
                                         .add(Part::box)
                                         .add(Part::touch)
                                         .add(Part::pages)
                                         .add(Part::plain)
                                         .add(Part::runs);

struct Row {
    const char* family;
    const char* mcu;  ///< As Build has it.
};
constexpr Row rows[] = {
    {"avr-mapped", "avrxmega3"},
    {"cortex-m0plus", "cortex-m0plus"},
    {"cortex-m3", "cortex-m3"},
};

const measured::FamilyRatio& ratio_of(const std::string& family) {
    for (const measured::FamilyRatio& ratio : measured::family_ratios)
        if (family == ratio.family) return ratio;
    ADD_FAILURE() << family << " is not in the table";
    return measured::family_ratios[0];
}

TEST(MeasuredRatios, AgreeWithTheEngineCompiledForBoth) {
    const Compiler compiler{DIALPLATE_TREE};
    if (!Compiler::installed()) GTEST_SKIP() << "needs the package gcc-avr";
    const int bare_here = compiler.compile({.engine = false}).flash;
    const double whole_here = compiler.compile({.parts = all_parts}).flash - bare_here;
    const double keys_here = compiler.compile({.parts = readout_and_keys}).flash - bare_here;
    for (const Row& row : rows) {
        if (!Compiler::installed(row.mcu)) GTEST_SKIP() << "needs the package gcc-arm-none-eabi";
        SCOPED_TRACE(std::string{row.family} + ": build the target measure-ratios");
        const measured::FamilyRatio& ratio = ratio_of(row.family);
        const int bare = compiler.compile({.engine = false, .mcu = row.mcu}).flash;
        const Compiled whole = compiler.compile({.parts = all_parts, .mcu = row.mcu});
        const Compiled keys = compiler.compile({.parts = readout_and_keys, .mcu = row.mcu});
        for (const double size :
             {(whole.flash - bare) / whole_here, (keys.flash - bare) / keys_here}) {
            // Another engine than those in the table may lie somewhat outside them.
            EXPECT_GT(size, ratio.least - 0.06);
            EXPECT_LT(size, ratio.greatest + 0.06);
        }
        EXPECT_NEAR(whole.state, ratio.state, 8);
        EXPECT_NEAR(whole.stack, ratio.stack, 96);
    }
}

TEST(MeasuredRatios, SayInTheLedgerWhatTheyAre) {
    Mcu here, there;
    here.name = measured::part;
    here.family = "avr";
    there.name = "one of them";
    for (const Row& row : rows) {
        SCOPED_TRACE(row.family);
        there.family = row.family;
        const measured::FamilyRatio& ratio = ratio_of(row.family);
        const CodeSize size = engine_size({.parts = all_parts}, there);
        EXPECT_NEAR(
            static_cast<double>(size.bytes.value),
            static_cast<double>(engine_size({.parts = all_parts}, here).bytes.value) * ratio.engine,
            1.0);
        EXPECT_EQ(size.standing, Standing::estimate);
        EXPECT_THAT(size.basis, testing::HasSubstr(ratio.toolchain));
        EXPECT_THAT(size.basis, testing::HasSubstr(measured::part));
        EXPECT_EQ(engine_state(DisplayProgram{}, there).value, ratio.state);
        EXPECT_EQ(stack_size(DisplayProgram{}, there).bytes.value, ratio.stack);
    }
}

}  // namespace
}  // namespace dialplate

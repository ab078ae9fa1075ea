// The table that the ledger predicts program sizes from, held against the engine as it is now.
#include "sim/ledger/measured_sizes.hpp"

#include "sim/ledger/code_size.hpp"
#include "tests/firmware/compiled.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace dialplate {
namespace {

constexpr std::uint32_t all_parts = (1U << part_count) - 1;

class MeasuredSizes : public testing::Test {
protected:
    void SetUp() override {
        if (!Compiler::installed()) {
            GTEST_SKIP() << "no avr-g++";
        }
        mcu_.name = measured::part;
        mcu_.family = "avr";
    }

    const Compiler compiler_{DIALPLATE_TREE};
    Mcu mcu_;
};

TEST_F(MeasuredSizes, AgreeWithTheCompiledEngine) {
    struct Row {
        const char* layout;
        PartSet parts;
    };
    const Row rows[] = {
        {"everything", PartSet{all_parts}},
        {"a readout alone", PartSet{}.add(Part::readout).add(Part::runs)},
        {"readout, keys, meter",
         PartSet{}
             .add(Part::readout)
             .add(Part::tuning_digit)
             .add(Part::box)
             .add(Part::touch)
             .add(Part::pages)
             .add(Part::rounded)
             .add(Part::meter)
             .add(Part::peak)
             .add(Part::runs)
             .add(Part::plain)},
        {"segments and a scale",
         PartSet{}
             .add(Part::readout)
             .add(Part::segment)
             .add(Part::scale)
             .add(Part::tape)
             .add(Part::plain)},
    };
    const int bare = compiler_.compile({.engine = false}).flash;
    for (const Row& row : rows) {
        SCOPED_TRACE(row.layout);
        const Compiled engine = compiler_.compile({.parts = row.parts});
        const int compiled = engine.flash - bare;
        const auto predicted = engine_size(row.parts, mcu_).bytes.value;
        // Engines at the rim of what is likely may be further off than the likely ones held out.
        EXPECT_NEAR(
            static_cast<double>(predicted), compiled, compiled * 1.5 * measured::worst_error)
            << "the engine has changed: build the target measure";
        // The margin is for likely engines, too.
        EXPECT_GE(static_cast<double>(stack_size(row.parts, mcu_).bytes.value),
                  engine.stack - measured::stack_margin / 2.0)
            << "the engine has changed: build the target measure";
    }
}

TEST_F(MeasuredSizes, HoldStateAndStackOfTheCompiledEngine) {
    const Compiled whole = compiler_.compile({.parts = PartSet{all_parts}});
    // A change of the engine may move a register or two to the stack before the table is renewed.
    EXPECT_NEAR(whole.state, measured::engine_state, 4) << "build the target measure";
    EXPECT_NEAR(whole.stack, measured::stack, 16) << "build the target measure";
}

TEST_F(MeasuredSizes, HoldTheDriversAsCompiled) {
    const auto less = [](PartSet parts, Part part) {
        return PartSet{parts.bits & ~(std::uint32_t{1} << static_cast<unsigned>(part))};
    };
    const PartSet with{all_parts}, without = less(with, Part::context),
                                   alone = less(with, Part::enlarged),
                                   nothing_else = less(alone, Part::tones_context);
    for (const measured::Driver& driver : measured::drivers) {
        const int number = static_cast<int>(driver.kind) + 1;
        SCOPED_TRACE(number);
        const auto flash = [&](PartSet parts) {
            return compiler_
                       .compile({.parts = parts,
                                 .driver = number,
                                 .bytes_per_pixel = driver.bytes_per_pixel})
                       .flash -
                   compiler_.compile({.parts = parts}).flash;
        };
        for (const auto& [parts, bytes] : {std::pair{without, driver.bytes},
                                           std::pair{with, driver.with_contexts},
                                           std::pair{alone, driver.with_contexts_alone},
                                           std::pair{nothing_else, driver.with_nothing_else}})
            EXPECT_NEAR(bytes, flash(parts), 30)
                << "a driver has changed: build the target measure";
    }
}

TEST_F(MeasuredSizes, HoldTheTouchSheetAsCompiled) {
    const auto flash = [&](bool touch) {
        return compiler_.compile({.parts = PartSet{all_parts}, .driver = 2, .touch = touch}).flash;
    };
    EXPECT_NEAR(measured::touch_reading, flash(true) - flash(false), 30)
        << "the reading of the touch sheet has changed: build the target measure";
}

TEST(MeasuredSizesTable, CoversEveryDriverOnce) {
    for (const BusKind kind :
         {BusKind::spi, BusKind::spi_timed, BusKind::usart_spi, BusKind::parallel8}) {
        const auto of_kind = std::count_if(
            std::begin(measured::drivers), std::end(measured::drivers), [&](const auto& d) {
                return d.kind == kind && d.bytes_per_pixel == 2;
            });
        EXPECT_EQ(of_kind, 1);
    }
}

}  // namespace
}  // namespace dialplate

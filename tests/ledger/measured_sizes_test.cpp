// The table that the ledger predicts program sizes from, held against the engine as it is now.
#include "sim/ledger/measured_sizes.hpp"

#include "sim/ledger/code_size.hpp"
#include "tests/firmware/compiled.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

constexpr PartSet whole_engine{(1U << part_count) - 1};

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
        DisplayProgram program;
    };
    const PartSet shapes = PartSet{}
                               .add(Part::readout)
                               .add(Part::tuning_digit)
                               .add(Part::box)
                               .add(Part::touch)
                               .add(Part::pages)
                               .add(Part::rounded)
                               .add(Part::meter)
                               .add(Part::peak);
    PartSet keys = shapes;
    keys.add(Part::runs).add(Part::plain);
    PartSet contexts = shapes;
    contexts.add(Part::context);
    const PartSet segments = PartSet{}
                                 .add(Part::readout)
                                 .add(Part::segment)
                                 .add(Part::scale)
                                 .add(Part::tape)
                                 .add(Part::plain);
    const Row rows[] = {
        {"everything, by two functions of the builder's own", {.parts = whole_engine}},
        {"a readout alone",
         {.parts = PartSet{}.add(Part::readout).add(Part::runs), .bus = BusKind::spi}},
        {"readout, keys, meter", {.parts = keys, .bus = BusKind::usart_spi, .touch_sheet = true}},
        {"readout, keys, meter, three bytes a pixel",
         {.parts = keys, .bus = BusKind::spi_timed, .bytes_per_pixel = 3, .touch_sheet = true}},
        {"glyphs decided and sent in one",
         {.parts = contexts, .bus = BusKind::spi_timed, .touch_sheet = true}},
        {"segments and a scale on a parallel bus", {.parts = segments, .bus = BusKind::parallel8}},
    };
    const int bare = compiler_.compile({.engine = false}).flash;
    for (const Row& row : rows) {
        SCOPED_TRACE(row.layout);
        const Compiled program = compiler_.compile(build_of(row.program));
        const int compiled = program.flash - bare;
        auto predicted = engine_size(row.program, mcu_).bytes;
        if (row.program.bus) predicted += driver_size(row.program, mcu_).bytes;
        if (row.program.touch_sheet) predicted += touch_size(row.program, mcu_).bytes;
        // The ledger's word to the builder: 1 % and 64 bytes.
        EXPECT_NEAR(static_cast<double>(predicted.value), compiled, 0.01 * compiled + 64)
            << "the engine has changed: build the target measure";
        // The ledger's word for RAM as for flash, and half of it is the stack's.
        EXPECT_NEAR(
            static_cast<double>(stack_size(row.program, mcu_).bytes.value), program.stack, 32)
            << "the engine has changed: build the target measure";
        EXPECT_NEAR(static_cast<double>(engine_state(row.program, mcu_).value), program.state, 4)
            << "the engine has changed: build the target measure";
    }
}

TEST_F(MeasuredSizes, HoldStateAndStackOfTheCompiledEngine) {
    const Compiled whole = compiler_.compile({.parts = whole_engine});
    // A change of the engine may move a register or two to the stack before the table is renewed.
    EXPECT_NEAR(whole.state, measured::engine_state + measured::segment_state, 4)
        << "build the target measure";
    EXPECT_NEAR(whole.stack, measured::stack, 16) << "build the target measure";
}

}  // namespace
}  // namespace dialplate

// What the choice of packings believes of decoders is what the compiler makes of them.
#include "sim/image/decoder_sizes.hpp"

#include "tests/firmware/compiled.hpp"

#include <gtest/gtest.h>

namespace dialplate {
namespace {

class DecoderSizes : public testing::Test {
protected:
    void SetUp() override {
        if (!Compiler::installed()) GTEST_SKIP() << "no avr-g++";
    }

    [[nodiscard]] int flash(PartSet parts, int driver = 0) const {
        return compiler_.compile({.parts = parts, .driver = driver}).flash;
    }

    const Compiler compiler_{DIALPLATE_TREE};
};

// What a decoder takes depends a little on its callers; a wrong choice within that costs as little.
constexpr int tolerance = 45;
constexpr int spi_timed = 2;  // of tests/firmware/engine_size.cpp

PartSet with(PartSet parts, unsigned packings) {
    return parts.add(Part::plain, (packings & packing_bit::plain) != 0)
        .add(Part::runs, (packings & packing_bit::runs) != 0)
        .add(Part::context, (packings & packing_bit::context) != 0);
}

}  // namespace

TEST_F(DecoderSizes, AreThoseOfSmallAndLargeEngines) {
    PartSet small;
    small.add(Part::readout);
    PartSet large = small;
    large.add(Part::box).add(Part::words).add(Part::touch).add(Part::pages).add(Part::meter);
    for (const PartSet without : {small, large}) {
        const int none = flash(without);
        for (unsigned packings = 1; packings < decoder_bytes.size(); ++packings) {
            SCOPED_TRACE(packings);
            EXPECT_NEAR(decoder_bytes[packings], flash(with(without, packings)) - none, tolerance);
        }
    }
}

TEST_F(DecoderSizes, HaveTheGrowthOfTheTimedDriver) {
    PartSet without;
    without.add(Part::readout).add(Part::box);
    const PartSet contexts = with(without, packing_bit::context);
    const int driver = flash(without, spi_timed) - flash(without);
    EXPECT_NEAR(
        decide_and_send_bytes, flash(contexts, spi_timed) - flash(contexts) - driver, tolerance);
}

}  // namespace dialplate

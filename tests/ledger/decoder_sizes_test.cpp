// What the choice of packings believes of decoders is what the compiler makes of them.
#include "sim/image/decoder_sizes.hpp"

#include "tests/firmware/compiled.hpp"

#include <gtest/gtest.h>

#include <string>

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
constexpr int tolerance = 50;
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
        for (const bool decides : {false, true}) {
            const int driver = decides ? spi_timed : 0;
            const int none = flash(without, driver);
            for (unsigned packings = 1; packings < decoder_bytes.size(); ++packings) {
                SCOPED_TRACE(std::to_string(packings) + (decides ? ", sent at once" : ""));
                EXPECT_NEAR(decoders_size(packings, {.decides = decides}),
                            flash(with(without, packings), driver) - none,
                            tolerance);
            }
        }
    }
}

TEST_F(DecoderSizes, HaveBothWaysOfContextsWhereAFaceIsEnlarged) {
    PartSet without;
    without.add(Part::readout).add(Part::box).add(Part::enlarged);
    EXPECT_NEAR(decoders_size(packing_bit::context, {.decides = true, .enlarged = true}),
                flash(with(without, packing_bit::context), spi_timed) - flash(without, spi_timed),
                tolerance);
}

}  // namespace dialplate

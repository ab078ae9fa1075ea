// What the choice of packings believes of decoders is what the compiler makes of them.
#include "sim/image/decoder_sizes.hpp"

#include "tests/firmware/compiled.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

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

/// Of one that draws a number alone, and of one with nearly everything; by a driver that decides and sends in one, or not.
struct Engine {
    bool large, decides;
};

class DecodersOf : public DecoderSizes, public testing::WithParamInterface<Engine> {};
INSTANTIATE_TEST_SUITE_P(Engines,
                         DecodersOf,
                         testing::Values(Engine{false, false},
                                         Engine{false, true},
                                         Engine{true, false},
                                         Engine{true, true}),
                         [](const auto& engine) {
                             return std::string{engine.param.large ? "Large" : "Small"} +
                                    (engine.param.decides ? "SentAtOnce" : "");
                         });

TEST_P(DecodersOf, AreAsLargeAsTheChoiceBelieves) {
    PartSet without;
    without.add(Part::readout);
    // All sets in the small one; what another engine makes of a decoder, these show.
    std::vector<unsigned> sets = {1, 2, 3, 4, 5, 6, 7};
    if (GetParam().large) {
        without.add(Part::box).add(Part::words).add(Part::touch).add(Part::pages).add(Part::meter);
        sets = {packing_bit::plain, packing_bit::context, 7};
    }
    const int driver = GetParam().decides ? spi_timed : 0;
    const int none = flash(without, driver);
    for (const unsigned packings : sets) {
        SCOPED_TRACE(packings);
        EXPECT_NEAR(decoders_size(packings, {.decides = GetParam().decides}),
                    flash(with(without, packings), driver) - none,
                    tolerance);
    }
}

TEST_F(DecoderSizes, HaveBothWaysOfContextsWhereAFaceIsEnlarged) {
    PartSet without;
    without.add(Part::readout).add(Part::box).add(Part::enlarged);
    EXPECT_NEAR(decoders_size(packing_bit::context, {.decides = true, .enlarged = true}),
                flash(with(without, packing_bit::context), spi_timed) - flash(without, spi_timed),
                tolerance);
}

}  // namespace
}  // namespace dialplate

// What the choice of packings believes of decoders is what the ledger measured.
#include "sim/image/decoder_sizes.hpp"

#include "sim/ledger/code_size.hpp"
#include "sim/ledger/measured_sizes.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>

namespace dialplate {
namespace {

// Two engines that differ in everything but glyphs. Tolerance: what a decoder takes depends a little on its
// callers; a wrong choice within it costs as little.
TEST(DecoderSizes, AreTheLedgersForSmallAndLargeEngines) {
    Mcu mcu;
    mcu.name = measured::part;
    mcu.family = "avr";
    PartSet small;
    small.add(Part::readout);
    PartSet large = small;
    large.add(Part::box).add(Part::words).add(Part::touch).add(Part::pages).add(Part::meter);
    for (const PartSet without : {small, large}) {
        for (unsigned packings = 0; packings < decoder_bytes.size(); ++packings) {
            SCOPED_TRACE(packings);
            PartSet with = without;
            with.add(Part::plain, (packings & packing_bit::plain) != 0)
                .add(Part::runs, (packings & packing_bit::runs) != 0)
                .add(Part::context, (packings & packing_bit::context) != 0);
            const Bytes measured = engine_size(with, mcu).bytes - engine_size(without, mcu).bytes;
            EXPECT_NEAR(decoder_bytes[packings], static_cast<double>(measured.value), 40);
        }
    }
}

TEST(DecoderSizes, HaveTheGrowthOfTheTimedDriver) {
    const auto* timed = std::find_if(
        std::begin(measured::drivers), std::end(measured::drivers), [](const measured::Driver& d) {
            return d.kind == BusKind::spi_timed && d.bytes_per_pixel == 2;
        });
    ASSERT_NE(timed, std::end(measured::drivers));
    EXPECT_NEAR(decide_and_send_bytes, timed->with_contexts - timed->bytes, 40);
}

}  // namespace
}  // namespace dialplate

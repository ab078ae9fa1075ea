// What the decoders of glyphs take in flash, for choosing between packings.
//
// Taken from the ledger's measured sizes (sim/ledger/measured_sizes.hpp): a typical engine with these packings, less
// the same without raster glyphs. tests/ledger holds them against those, so there is one truth.
#pragma once

#include "sim/layout/layout.hpp"

#include <array>

namespace dialplate {

/// Which packings there are, one bit each.
namespace packing_bit {
constexpr unsigned plain = 1, runs = 2, context = 4;
}

/// Bytes on the ATmega328P for each set of packings.
inline constexpr std::array<int, 8> decoder_bytes = {0, 1029, 734, 1602, 1043, 1914, 1631, 2498};

/// The same for bitmaps in tones, each beside a face in one bit in context: what proofs of trail-cw link more with a
/// smooth face.
inline constexpr int plain_tones_decoder_bytes = 680, context_tones_decoder_bytes = 570;

/// Bytes that a driver grows by which decides and sends glyphs in `context` in one: hardware SPI timed, with two
/// bytes a pixel (ui/mcu/spi_timed_contexts.hpp).
inline constexpr int decide_and_send_bytes = 446;

}  // namespace dialplate

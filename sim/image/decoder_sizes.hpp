// What the decoders of glyphs take in flash, for choosing between packings.
//
// Compiled: engines with these packings, less the same without any. Not from the ledger's terms
// (sim/ledger/measured_sizes.hpp): these were fitted to engines that all draw glyphs, and say too much of one that
// draws none. tests/ledger holds them against the compiler.
#pragma once

#include "sim/layout/layout.hpp"

#include <array>

namespace dialplate {

/// Which packings there are, one bit each.
namespace packing_bit {
constexpr unsigned plain = 1, runs = 2, context = 4;
}

/// Bytes on the ATmega328P for each set of packings.
inline constexpr std::array<int, 8> decoder_bytes = {0, 815, 510, 1310, 875, 1650, 1375, 2150};

/// The same for bitmaps in tones, each beside a face in one bit in context: what proofs of trail-cw link more with a
/// smooth face.
inline constexpr int plain_tones_decoder_bytes = 700, context_tones_decoder_bytes = 580;

/// Bytes that a driver grows by which decides and sends glyphs in `context` in one: hardware SPI timed, with two
/// bytes a pixel (ui/mcu/spi_timed_contexts.hpp).
inline constexpr int decide_and_send_bytes = 415;

}  // namespace dialplate

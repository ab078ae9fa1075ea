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

/// Bytes on the ATmega328P for each set of packings, the look-up of a glyph's metrics included.
inline constexpr std::array<int, 8> decoder_bytes = {0, 960, 570, 1390, 831, 1700, 1350, 2164};

/// The same where the driver decides and sends glyphs in `context` in one, and no face is enlarged: hardware SPI timed
/// or USART, with two bytes a pixel (ui/mcu/sent_contexts.hpp).
inline constexpr std::array<int, 8> sending_decoder_bytes = {
    0, 903, 570, 1370, 367, 1270, 910, 1720};

/// What that takes more where a face is enlarged: both ways are there.
inline constexpr int enlarged_contexts_bytes = 750;

/// Whether the driver of ui/mcu for such a bus decides glyphs in `context` itself while it sends them, unless they are
/// enlarged (ui/mcu/sent_contexts.hpp).
constexpr bool sends_contexts(BusKind kind, int bytes_per_pixel) {
    return bytes_per_pixel == 2 && (kind == BusKind::spi_timed || kind == BusKind::usart_spi);
}

/// How glyphs leave.
struct Sending {
    bool decides = false;   ///< The driver decides glyphs in `context` and sends them in one.
    bool enlarged = false;  ///< Of a face that is enlarged.
};

/// Bytes for a set of packings.
constexpr int decoders_size(unsigned packings, Sending sending) {
    if (!sending.decides) return decoder_bytes[packings];
    const bool both_ways = sending.enlarged && (packings & packing_bit::context) != 0;
    return sending_decoder_bytes[packings] + (both_ways ? enlarged_contexts_bytes : 0);
}

/// The same for bitmaps in tones, each beside a face in one bit in context: what proofs of trail-cw link more with a
/// smooth face.
inline constexpr int plain_tones_decoder_bytes = 700, context_tones_decoder_bytes = 580;

}  // namespace dialplate

// The bit layer of the packing `runs`: rows that repeat cost one bit, all others are alternating runs
// in Rice codes. R. F. Rice, "Some Practical Universal Noiseless Coding Techniques", JPL 79-22, 1979.
#pragma once

#include "fonts/bits.hpp"
#include "fonts/face.hpp"

#include <vector>

namespace dialplate::fonts {

/// Rice parameters of a face or picture, 0..rice_max each.
struct RunParameters {
    int white = 0;
    int black = 0;

    /// As the image holds them: white in bits 0-3, black in bits 4-7.
    [[nodiscard]] std::uint8_t byte() const {
        return static_cast<std::uint8_t>(white | (black << 4));
    }
};

constexpr int rice_max = 7;  // the decoder shifts a byte: runs of a face are below 256

/// The parameters that make the byte streams of `bitmaps`, each rounded up to bytes, smallest in
/// sum; among equals the smallest white, then the smallest black.
RunParameters best_parameters(const std::vector<const Bitmap*>& bitmaps);

void write_runs(BitWriter& to, const Bitmap& bitmap, RunParameters parameters);

/// @return Nothing if the bits end too early, a row's runs do not sum to `width`, or a parameter is
///         out of range.
std::optional<Bitmap> read_runs(BitReader& from, int width, int height, RunParameters parameters);

}  // namespace dialplate::fonts

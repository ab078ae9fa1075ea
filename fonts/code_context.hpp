// The bit layer of the packing `context`: every decision of the model in an interval coder with a range of
// eight bits. G. G. Langdon, "An Introduction to Arithmetic Coding", IBM J. Res. Dev. 28 (2), 1984.
#pragma once

#include "fonts/bits.hpp"
#include "fonts/face.hpp"

#include <functional>
#include <span>
#include <vector>

namespace dialplate::fonts {

/// What stands in the image between streams.
struct Between {
    /// Bitmaps of a group stand together, if they can be moved.
    std::function<int(const Bitmap&)> group;
    /// In front of the stream of a bitmap that comes after one of `before`, which may be its own group.
    std::function<std::vector<std::uint8_t>(int before, const Bitmap&, std::size_t bytes)> bytes;
};

/// Streams of bitmaps that stand one after the other in the image: each is cut to the shortest that decodes
/// right when the decoder reads on into what follows. What is behind the last does not
/// matter, but the decoder may read up to two bytes of it.
/// @param between  Null: nothing stands between them.
std::vector<std::vector<std::uint8_t>> write_contexts(const std::vector<const Bitmap*>& bitmaps,
                                                      const ContextTable& table,
                                                      const Between* between = nullptr);

/// Bytes of the longest stream of these, whatever follows it.
std::size_t longest_stream(const std::vector<const Bitmap*>& bitmaps, const ContextTable& table);

/// An order of bitmaps in which write_contexts() needs few bytes: each is put before one whose first bytes suit it.
/// A greedy search; about n x n / 2 trials.
/// @param fixed        So many of the first stay where they are.
/// @param first_group  Comes first, if it can.
/// @return             Indices, a permutation.
std::vector<std::size_t> short_order(const std::vector<const Bitmap*>& bitmaps,
                                     std::size_t fixed,
                                     const ContextTable& table,
                                     const Between* between = nullptr,
                                     int first_group = 0);

/// Decodes one bitmap from its stream and what follows it; past the end of `bytes` come zeros.
Bitmap read_contexts(std::span<const std::uint8_t> bytes,
                     int width,
                     int height,
                     bool tones,
                     const ContextTable& table);

}  // namespace dialplate::fonts

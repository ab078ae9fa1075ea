// What each byte of an image is, by walking the grammar of ui/image.md: the kind of work that reading it is.
#pragma once

#include "sim/prototype/engine_work.hpp"

#include <cstdint>
#include <utility>
#include <vector>

namespace dialplate {

/// A drawing in bits: a glyph of a raster face, or a strip of a picture.
struct CodedBitmap {
    std::uint16_t data = 0;  ///< Place of its first bit.
    std::uint8_t packing = 0, parameters = 0;
    int width = 0, height = 0, times = 1;
    int inked_left = 0, inked_top = 0, inked_width = 0, inked_height = 0;  ///< Plain.
};

struct ImageMap {
    std::vector<std::uint16_t> kinds;  ///< Of each byte: a kind of work below work::reads.
    /// By the place of the byte that is read once whenever it is drawn: behind the advance of a glyph, the
    /// first of a strip; in context, where streams run into each other, of the glyph's metrics. Sorted.
    std::vector<std::pair<std::uint16_t, CodedBitmap>> bitmaps;
};

/// @pre A whole image, as build_image() makes them.
ImageMap map_of_image(const std::vector<std::uint8_t>& image);

/// How often each kind of work is done when a bitmap is decoded; adds to `work`.
void add_decoding(const std::vector<std::uint8_t>& image,
                  const CodedBitmap& bitmap,
                  EngineWork& work);

}  // namespace dialplate

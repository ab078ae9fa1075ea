// Which packing each raster face and each picture has: what takes the least flash all in all, decoders and tables
// counted.
#pragma once

#include "fonts/face.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace dialplate {

/// A face to be packed. The raster must outlive the choice.
struct FaceToPack {
    const RasterFace* raster;
    PackingWish wish = PackingWish::automatic;
    int enlarged = 1;
    bool digits_first = true;  ///< Its digits are counted from "0": they follow each other.
};

/// A picture to be packed. The bitmap must outlive the choice.
struct PictureToPack {
    const Bitmap* bitmap;
    PackingWish wish = PackingWish::automatic;
};

/// How it is packed, and what the other packings would take; 0: it does not fit that packing.
struct PackingChoice {
    PackedFace face;  ///< Of a picture: its bytes.
    Bytes plain, runs, context;
    std::vector<char32_t> order;  ///< Of the glyphs as packed; none in a picture.
};

struct PackingChoices {
    std::vector<PackingChoice> faces;      ///< One for each to be packed, in their order.
    std::vector<PackingChoice> pictures;   ///< The same.
    std::optional<ContextTable> contexts;  ///< Present if one of them is packed in `context`.
    int table_bytes = 0;  ///< How many of `contexts` the image needs: all of them only for tones.
    Bytes all_in;         ///< Faces, pictures, table and decoders.
};

/// What else counts when packings are chosen.
struct PackingSurroundings {
    unsigned already = 0;            ///< Packings whose decoders are there anyway: packing_bit.
    bool decides_and_sends = false;  ///< The driver decides glyphs in `context` itself: Sending.
};

/// Takes, of all sets of packings, the one with which the faces, the decoders and the table take the least; equal:
/// the simpler. What the author has named the packing of keeps it; what does not fit any has no bytes.
PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const PackingSurroundings& surroundings = {},
                               const std::vector<PictureToPack>& pictures = {});

}  // namespace dialplate

// Which packing each raster face has: what takes the least flash all in all, decoders and tables counted.
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

/// How it is packed, and what the other packings would take; 0: it does not fit that packing.
struct PackingChoice {
    PackedFace face;
    Bytes plain, runs, context;
    std::vector<char32_t> order;  ///< Of the glyphs as packed.
};

struct PackingChoices {
    std::vector<PackingChoice> faces;      ///< One for each to be packed, in their order.
    std::optional<ContextTable> contexts;  ///< Present if a face is packed in `context`.
    Bytes all_in;                          ///< Faces, table and decoders.
};

/// What else counts when packings are chosen.
struct PackingSurroundings {
    unsigned already = 0;            ///< Packings whose decoders are there anyway: packing_bit.
    bool decides_and_sends = false;  ///< The driver grows with `context`: decide_and_send_bytes.
};

/// Takes, of all sets of packings, the one with which the faces, the decoders and the table take the least; equal:
/// the simpler. A face whose packing the author has named keeps it; one that does not fit any has no bytes.
PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const PackingSurroundings& surroundings = {});

}  // namespace dialplate

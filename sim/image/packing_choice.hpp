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
};

/// How it is packed, and what the other packings would take; 0: it does not fit that packing.
struct PackingChoice {
    PackedFace face;
    Bytes plain, runs, context;
};

struct PackingChoices {
    std::vector<PackingChoice> faces;      ///< One for each to be packed, in their order.
    std::optional<ContextTable> contexts;  ///< Present if a face is packed in `context`.
};

/// Takes `context` for the faces that are smaller in it, if together they save more than its decoder and its
/// table take; a face whose packing the author has named keeps it.
PackingChoices choose_packings(const std::vector<FaceToPack>& faces);

}  // namespace dialplate

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
};

struct PackingChoices {
    std::vector<PackingChoice> faces;      ///< One for each to be packed, in their order.
    std::vector<PackingChoice> pictures;   ///< The same.
    std::optional<ContextTable> contexts;  ///< Present if something is packed in `context`.
    int table_bytes = 0;  ///< Of `contexts`, how many the image needs: all of them only for tones.
};

/// Takes `context` for what is smaller in it, if together they save more than its decoders and its table take; a
/// face or picture whose packing the author has named keeps it.
PackingChoices choose_packings(const std::vector<FaceToPack>& faces,
                               const std::vector<PictureToPack>& pictures = {});

}  // namespace dialplate

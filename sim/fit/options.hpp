// What each face may become, measured one face at a time.
#pragma once

#include "sim/fit/fit.hpp"
#include "sim/image/decoder_sizes.hpp"

#include <array>
#include <vector>

namespace dialplate {

/// A font at a size in place of a face.
struct FaceOption {
    FaceChoice choice;
    std::optional<ArcMinutes> angle;
    double margin = 0;  ///< Angle to angle required; infinite when no capitals or digits are shown.
    /// Least that it can take when there are these decoders (a set of packing_bit); absent: it fits none of them.
    std::array<std::optional<std::int64_t>, decoder_bytes.size()> least{};
};

/// A copy of the layout with faces exchanged, packings to be chosen anew but for the kept ones.
Layout with_faces(const Layout& layout, const std::vector<FaceChoice>& faces, const FitWish& wish);

/// The choices as the layout has them.
std::vector<FaceChoice> faces_of(const Layout& layout);

/// Options of a face, by margin, then size of file name. One that can be had and whose own texts have room even while all
/// other faces are as small as they may be; of a face that may not change, itself alone.
std::vector<FaceOption> options_for(const Layout& layout, FaceId face, const FitWish& wish);

}  // namespace dialplate

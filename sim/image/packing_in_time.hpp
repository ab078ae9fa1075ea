// Packings for faces whose digits may take only so long to change: the least flash among those that are fast enough.
#pragma once

#include "sim/image/digit_time.hpp"
#include "sim/image/packing_choice.hpp"

#include <optional>
#include <vector>

namespace dialplate {

/// @param most_cycles  For each face what half of its digits' changes may take; nothing: any time.
/// @return             As choose_packings(). A face that is too slow in every packing has the one that takes the least flash.
PackingChoices choose_packings_in_time(std::vector<FaceToPack> faces,
                                       const std::vector<std::optional<double>>& most_cycles,
                                       const PixelTimes& pixel,
                                       const PackingSurroundings& surroundings,
                                       const std::vector<PictureToPack>& pictures);

}  // namespace dialplate

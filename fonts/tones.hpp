// A tone, 0 ground to 3 ink, as the two bits of a pixel (ui/image.md, "Tones").
#pragma once

#include <cstdint>

namespace dialplate::fonts {

/// The first bit: whether it is nearer to ink than to ground.
constexpr bool nearer_to_ink(unsigned tone) {
    return tone >= 2;
}
/// The second bit: whether it is between them.
constexpr bool between(unsigned tone) {
    return tone == 1 || tone == 2;
}
constexpr std::uint8_t tone_of(bool near_ink, bool in_between) {
    return near_ink ? (in_between ? 2 : 3) : (in_between ? 1 : 0);
}

}  // namespace dialplate::fonts

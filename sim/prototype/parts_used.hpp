// Which parts of the engine a layout uses: the configuration that the firmware is compiled with
// (ui/parts.hpp), and the key under which its size was measured.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <cstdint>

namespace dialplate {

/// One bit for each part, in the order of ui/parts.hpp.
enum class Part : std::uint8_t {
    readout,
    box,
    meter,
    scale,
    picture,
    plain,
    runs,
    segment,
    enlarged,
    tuning_digit,
    sign,
    rounded,
    words,
    touch,
    hold,
    pages,
    peak,
    blocks,
    upright,
    tape,
    context,
    smooth,
    tones_plain,
    tones_context,
    changed_runs,
};
inline constexpr int part_count = 25;

/// The name of a part as ui/parts.hpp spells it.
const char* name_of(Part part);

/// Some of the parts.
struct PartSet {
    std::uint32_t bits = 0;

    [[nodiscard]] constexpr bool has(Part part) const {
        return (bits >> static_cast<unsigned>(part) & 1U) != 0;
    }
    constexpr PartSet& add(Part part) {
        bits |= std::uint32_t{1} << static_cast<unsigned>(part);
        return *this;
    }
    constexpr PartSet& add(Part part, bool wanted) { return wanted ? add(part) : *this; }
    friend constexpr bool operator==(const PartSet&, const PartSet&) = default;
};

/// The packings of faces, with those in tones as parts of their own; and those of pictures.
PartSet packings_of_faces(const Layout& layout, const BuiltImage& built);
PartSet packings_of_pictures(const BuiltImage& built);

/// @pre `built` was made from `layout` without errors.
PartSet parts_used(const Layout& layout, const BuiltImage& built);

}  // namespace dialplate

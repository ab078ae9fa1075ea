// The bands of the dial: amateur bands by Region, broadcast bands, and the sideband that is usual
// where.
//
// Band edges shown are not permission to transmit: national law is narrower in places.
#pragma once

#include <cstdint>
#include <optional>
#include <span>

namespace dialplate {

/// ITU Regions: 1 Europe, Africa, the Middle East and Northern Asia; 2 the Americas; 3 the rest of
/// Asia and the Pacific.
enum class Region { one, two, three };

/// Both edges belong to the band; hertz.
struct BandEdges {
    std::int32_t low = 0;
    std::int32_t high = 0;
    [[nodiscard]] constexpr bool contain(std::int32_t hertz) const {
        return low <= hertz && hertz <= high;
    }
    friend constexpr bool operator==(const BandEdges&, const BandEdges&) = default;
};

struct AmateurBand {
    const char* name;  ///< "40 m".
    BandEdges one, two, three;
    const char* note;  ///< May be empty.
    [[nodiscard]] constexpr const BandEdges& edges(Region region) const {
        return region == Region::one ? one : region == Region::two ? two : three;
    }
};

struct BroadcastBand {
    const char* name;  ///< "49 m".
    BandEdges edges;
    const char* note;
};

/// From low to high. Source: standards, section 8, "Amateur bands".
[[nodiscard]] std::span<const AmateurBand> amateur_bands();
/// From low to high. Source: standards, section 8, "Broadcast bands".
[[nodiscard]] std::span<const BroadcastBand> broadcast_bands();

[[nodiscard]] const AmateurBand* amateur_band_at(std::int32_t hertz, Region region);
[[nodiscard]] const BroadcastBand* broadcast_band_at(std::int32_t hertz);

enum class Sideband { lower, upper };

/// The sideband that is custom for voice: lower below 10 MHz, upper from there up and in the 60 m
/// band.
/// Source: standards RX-10.
[[nodiscard]] Sideband usual_sideband(std::int32_t hertz);

}  // namespace dialplate

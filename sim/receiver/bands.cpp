#include "sim/receiver/bands.hpp"

#include <algorithm>

namespace dialplate {

namespace {

constexpr BandEdges khz(double low, double high) {
    return {static_cast<std::int32_t>(low * 1000.0), static_cast<std::int32_t>(high * 1000.0)};
}

// clang-format off
constexpr AmateurBand amateur[] = {
    {"160 m", khz(1810, 2000), khz(1800, 2000), khz(1800, 2000),
     "medium frequency; Region 1: allocated 1810 to 1850 kHz, to 2000 kHz in its band plan and many countries"},
    {"80 m", khz(3500, 3800), khz(3500, 4000), khz(3500, 3900), ""},
    {"60 m", khz(5351.5, 5366.5), khz(5351.5, 5366.5), khz(5351.5, 5366.5), "secondary, low power (WRC-15)"},
    {"40 m", khz(7000, 7200), khz(7000, 7300), khz(7000, 7200), ""},
    {"30 m", khz(10100, 10150), khz(10100, 10150), khz(10100, 10150), ""},
    {"20 m", khz(14000, 14350), khz(14000, 14350), khz(14000, 14350), ""},
    {"17 m", khz(18068, 18168), khz(18068, 18168), khz(18068, 18168), ""},
    {"15 m", khz(21000, 21450), khz(21000, 21450), khz(21000, 21450), ""},
    {"12 m", khz(24890, 24990), khz(24890, 24990), khz(24890, 24990), ""},
    {"10 m", khz(28000, 29700), khz(28000, 29700), khz(28000, 29700), ""},
};
constexpr BroadcastBand broadcast[] = {
    {"49 m", khz(5900, 6200), ""},
    {"41 m", khz(7200, 7450), "Regions 1 and 3; 7200 to 7300 kHz is amateur in Region 2"},
    {"31 m", khz(9400, 9900), ""},
    {"25 m", khz(11600, 12100), ""},
    {"22 m", khz(13570, 13870), ""},
    {"19 m", khz(15100, 15800), "often listed to 15830 kHz"},
    {"16 m", khz(17480, 17900), ""},
    {"15 m", khz(18900, 19020), ""},
    {"13 m", khz(21450, 21850), ""},
    {"11 m", khz(25670, 26100), ""},
};
// clang-format on

constexpr std::int32_t sideband_change = 10'000'000;  // Hertz; standards RX-10.

}  // namespace

std::span<const AmateurBand> amateur_bands() {
    return amateur;
}
std::span<const BroadcastBand> broadcast_bands() {
    return broadcast;
}

const AmateurBand* amateur_band_at(std::int32_t hertz, Region region) {
    const auto* found = std::find_if(std::begin(amateur), std::end(amateur), [&](const auto& band) {
        return band.edges(region).contain(hertz);
    });
    return found == std::end(amateur) ? nullptr : found;
}

const BroadcastBand* broadcast_band_at(std::int32_t hertz) {
    const auto* found = std::find_if(std::begin(broadcast),
                                     std::end(broadcast),
                                     [&](const auto& band) { return band.edges.contain(hertz); });
    return found == std::end(broadcast) ? nullptr : found;
}

Sideband usual_sideband(std::int32_t hertz) {
    const AmateurBand* band = amateur_band_at(hertz, Region::one);
    const bool sixty_metres = band != nullptr && band->one == khz(5351.5, 5366.5);
    return hertz >= sideband_change || sixty_metres ? Sideband::upper : Sideband::lower;
}

}  // namespace dialplate

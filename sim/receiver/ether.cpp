#include "sim/receiver/ether.hpp"

#include "sim/receiver/bands.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <optional>

namespace dialplate {

namespace {

/// A raster of places where a station may be.
struct Raster {
    std::int32_t spacing;  ///< Hertz.
    std::int32_t scatter;  ///< Stations stand off the raster by up to this; hertz.
};
constexpr Raster medium_wave{9000, 0};  // Standards RX-14.
constexpr Raster short_wave{5000, 0};   // Standards, section 8: channels step 5 kHz.
constexpr Raster scattered{3000, 1400};
constexpr Raster rasters[] = {medium_wave, short_wave, scattered};

// Region 1 channels 531 to 1602 kHz, from memory.
constexpr BandEdges medium_wave_band{526'500, 1'606'500};

/// What is to be expected of a stretch of the spectrum.
struct Population {
    const Raster* raster;
    double density;             ///< Stations to a place of the raster.
    double weakest, strongest;  ///< dBm at the aerial's socket.
};

Population population_at(std::int32_t hertz) {
    if (medium_wave_band.contain(hertz)) return {&rasters[0], 0.5, -95.0, -35.0};
    if (broadcast_band_at(hertz) != nullptr) return {&rasters[1], 0.6, -95.0, -40.0};
    if (amateur_band_at(hertz, Region::two) != nullptr) return {&rasters[2], 0.35, -112.0, -60.0};
    return {&rasters[2], 0.06, -110.0, -75.0};
}

/// A well-mixed number for a place and a purpose.
class Chance {
public:
    explicit Chance(std::uint64_t place) : state_(place) {}
    /// 0 <= x < 1, another one each time.
    double next() {
        // Weyl sequence and two xor-multiply rounds; only its evenness matters here.
        state_ += 0x9E3779B97F4A7C15u;
        std::uint64_t x = state_;
        x = (x ^ (x >> 32)) * 0xD6E8FEB86659FD93u;
        x = (x ^ (x >> 32)) * 0xD6E8FEB86659FD93u;
        x ^= x >> 32;
        return static_cast<double>(x >> 11) * 0x1.0p-53;
    }
    double between(double low, double high) { return low + (high - low) * next(); }

private:
    std::uint64_t state_;
};

double milliwatts(double dbm) {
    return std::pow(10.0, dbm / 10.0);
}
double decibels(double milliwatts) {
    return 10.0 * std::log10(milliwatts);
}

double swing(double seconds, double period, double phase) {
    return std::sin(2.0 * std::numbers::pi * (seconds / period + phase));
}

/// How far a filter is down beside its pass band: straight skirts that reach 60 dB at twice the
/// bandwidth, 90 dB at the most.
double skirt_db(double offset, double bandwidth) {
    const double outside = (offset - bandwidth / 2.0) / (bandwidth / 2.0);
    return std::clamp(60.0 * outside, 0.0, 90.0);
}
/// Beyond this the skirts have come down to their 90 dB.
double reach(double bandwidth) {
    return std::min(1.25 * bandwidth, 50'000.0);
}

/// External noise above thermal. ITU-R P.372, man-made noise of a quiet rural place, from memory;
/// the formula holds for 0.3 to 30 MHz.
double external_noise_db(Hertz frequency) {
    const double megahertz = std::clamp(frequency.value / 1e6, 0.3, 30.0);
    return 53.6 - 28.6 * std::log10(megahertz);
}

}  // namespace

DecibelMilliwatts Ether::power(const Tuned& tuned, std::int64_t milliseconds) const {
    assert(tuned.bandwidth.value > 0.0);
    const double seconds = static_cast<double>(milliseconds) / 1000.0;
    const double noise = noise_floor(tuned.bandwidth).value + external_noise_db(tuned.frequency) +
                         1.5 * swing(seconds, 11.0, 0.0);
    double sum = milliwatts(noise);
    const double span = reach(tuned.bandwidth.value);
    for (const Raster& raster : rasters) {
        const double margin = span + raster.scatter;
        const auto first =
            static_cast<std::int64_t>((tuned.frequency.value - margin) / raster.spacing);
        const auto last =
            static_cast<std::int64_t>((tuned.frequency.value + margin) / raster.spacing);
        for (std::int64_t place = std::max<std::int64_t>(first, 1); place <= last; ++place) {
            const auto middle = static_cast<std::int32_t>(place * raster.spacing);
            const Population population = population_at(middle);
            if (population.raster != &raster) continue;
            Chance chance(static_cast<std::uint64_t>(seed_) << 32 ^
                          static_cast<std::uint64_t>(middle));
            if (chance.next() >= population.density) continue;
            const double at = middle + chance.between(-1.0, 1.0) * raster.scatter;
            const double strength = chance.between(population.weakest, population.strongest);
            const double depth = chance.between(1.0, 5.0);
            const double fade =
                depth * swing(seconds, chance.between(7.0, 25.0), chance.next()) +
                depth / 2.0 * swing(seconds, chance.between(2.0, 5.0), chance.next());
            const double down =
                skirt_db(std::abs(at - tuned.frequency.value), tuned.bandwidth.value);
            sum += milliwatts(strength + fade - down);
        }
    }
    return DecibelMilliwatts{decibels(sum)};
}

}  // namespace dialplate

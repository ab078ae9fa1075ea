// What an aerial picks up: stations that fade, and noise between them. Made up, but always the
// same.
#pragma once

#include "sim/receiver/s_meter.hpp"

#include <cstdint>

namespace dialplate {

/// Where and how a receiver listens.
struct Tuned {
    Hertz frequency;
    Hertz bandwidth;  ///< > 0.
};

/// A deterministic radio sky.
///
/// Modelled: carriers on the 5 kHz channels of the broadcast bands and the 9 kHz channels of
/// medium wave, scattered signals elsewhere (more of them in the amateur bands), each with a
/// strength and a slow fade of its own; noise that grows with the bandwidth (standards RX-07) and
/// towards low frequencies. Not modelled: time of day, modulation, overload, the two sidebands.
class Ether {
public:
    explicit Ether(std::uint32_t seed) : seed_(seed) {}

    /// Total power in the pass band, 0..n ms after the beginning.
    [[nodiscard]] DecibelMilliwatts power(const Tuned& tuned, std::int64_t milliseconds) const;

private:
    std::uint32_t seed_;
};

}  // namespace dialplate

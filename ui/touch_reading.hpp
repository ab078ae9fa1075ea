// From samples of a resistive touch sheet to one reading: filter and pressure, in integers.
#pragma once

#include <stdint.h>

namespace dialplate {

/// Where the sheet was touched, in counts of its converter; which way they run, and how far, is a matter
/// of calibration (touch_calibration.hpp).
struct RawTouch {
    uint16_t x;
    uint16_t y;
};

/// Samples of one axis. Odd, so that there is a middle.
constexpr uint8_t touch_samples = 5;

/// Mean of the three middle ones of five samples: spikes are left out, noise is averaged. Sorts them.
/// @return Rounded to the nearest; every sample at most 16383.
/// Source: standards RES-10 (common practice).
inline uint16_t middle_of(uint16_t (&samples)[touch_samples]) {
    for (uint8_t i = 1; i < touch_samples; ++i) {
        const uint16_t sample = samples[i];
        uint8_t to = i;
        for (; to > 0 && samples[to - 1] > sample; --to) {
            samples[to] = samples[to - 1];
        }
        samples[to] = sample;
    }
    return static_cast<uint16_t>((samples[1] + samples[2] + samples[3] + 1) / 3);
}

constexpr uint16_t no_touch_ohm = 0xFFFF;

/// What a press measures.
struct PressReading {
    uint16_t position;  ///< Counts along the x plate from its driven-low end, 0..full_scale.
    uint16_t z1;        ///< Counts on the x plate, the current flowing through the contact.
    uint16_t z2;        ///< Counts on the y plate, likewise; at least z1.
};

/// Resistance of the contact: the firmer the press, the lower.
/// @param plate_ohm   Of the x plate from end to end, 1..2047.
/// @param scale_bits  log2 of the converter's full scale: 12 or 10.
/// @return Ohms within 1 of the formula; `no_touch_ohm` without a contact or beyond 65534.
/// Source: standards RES-02, Rt = Rx * X / 2^bits * (Z2 / Z1 - 1), multiplied out so that no quotient is
///         taken before the product.
inline uint16_t touch_ohm(const PressReading& press, uint16_t plate_ohm, uint8_t scale_bits) {
    if (press.z1 == 0) {
        return no_touch_ohm;
    }
    if (press.z2 <= press.z1) {
        return 0;
    }
    const uint16_t apart = static_cast<uint16_t>(press.z2 - press.z1);
    const uint32_t ratio = static_cast<uint32_t>(press.position) * apart / press.z1;
    if (ratio >= (uint32_t{1} << 21)) {
        return no_touch_ohm;  // Times 2047 would not fit 32 bits.
    }
    const uint32_t half = uint32_t{1} << (scale_bits - 1);
    const uint32_t ohm = (ratio * plate_ohm + half) >> scale_bits;
    return ohm < no_touch_ohm ? static_cast<uint16_t>(ohm) : no_touch_ohm;
}

}  // namespace dialplate

// Signal strength: power at the receiver's input, S units, microvolts, and the noise below it all.
#pragma once

#include "sim/layout/units.hpp"

#include <string>

namespace dialplate {

/// Power available from the antenna, in dB above a milliwatt.
using DecibelMilliwatts = Quantity<struct DecibelMilliwattUnit, double>;
using Microvolts = Quantity<struct MicrovoltUnit, double>;

/// The power that reads S9: -73 dBm below 30 MHz, -93 dBm from there up.
/// Source: standards RX-01, RX-02 (IARU Region 1 Technical Recommendation R.1; section 10, item
/// 16).
[[nodiscard]] DecibelMilliwatts s9_level(Hertz frequency);

/// What an S-meter reads: up to S9 in S units of 6 dB, beyond it in dB over S9.
struct SReading {
    double units = 0.0;    ///< 0..9; 9 whenever `over_db` is above 0.
    double over_db = 0.0;  ///< >= 0.
};

/// Source: standards RX-03, RX-06; below S0 reads S0.
[[nodiscard]] SReading s_reading(DecibelMilliwatts power, Hertz frequency);
[[nodiscard]] DecibelMilliwatts power_of(const SReading& reading, Hertz frequency);

/// "S7", "S9", "S9+20": S units rounded down as an operator calls them, the rest to whole dB.
[[nodiscard]] std::string s_text(const SReading& reading);

/// Voltage across 50 ohm. Source: standards RX-05.
[[nodiscard]] Microvolts voltage_of(DecibelMilliwatts power);
/// @pre Above 0.
[[nodiscard]] DecibelMilliwatts power_of(Microvolts voltage);

/// Thermal noise at 290 K in a bandwidth, as a perfect receiver would have it.
/// @pre Above 0. Source: standards RX-07.
[[nodiscard]] DecibelMilliwatts noise_floor(Hertz bandwidth);

}  // namespace dialplate

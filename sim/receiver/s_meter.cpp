#include "sim/receiver/s_meter.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace dialplate {

namespace {

constexpr double db_per_s_unit = 6.0;    // Standards RX-03.
constexpr double resistance_ohm = 50.0;  // Standards RX-05.
constexpr double thermal_dbm_per_hertz = -174.0;

}  // namespace

DecibelMilliwatts s9_level(Hertz frequency) {
    return DecibelMilliwatts{frequency.value < 30e6 ? -73.0 : -93.0};
}

SReading s_reading(DecibelMilliwatts power, Hertz frequency) {
    const double over = power.value - s9_level(frequency).value;
    if (over > 0.0) return {.units = 9.0, .over_db = over};
    return {.units = std::max(0.0, 9.0 + over / db_per_s_unit), .over_db = 0.0};
}

DecibelMilliwatts power_of(const SReading& reading, Hertz frequency) {
    return DecibelMilliwatts{s9_level(frequency).value + (reading.units - 9.0) * db_per_s_unit +
                             reading.over_db};
}

std::string s_text(const SReading& reading) {
    const long over = std::lround(reading.over_db);
    if (over > 0) return "S9+" + std::to_string(over);
    // A hair below a whole unit, from arithmetic alone, is that unit.
    return "S" + std::to_string(static_cast<int>(std::floor(reading.units + 1e-9)));
}

Microvolts voltage_of(DecibelMilliwatts power) {
    const double watts = std::pow(10.0, (power.value - 30.0) / 10.0);
    return Microvolts{std::sqrt(resistance_ohm * watts) * 1e6};
}

DecibelMilliwatts power_of(Microvolts voltage) {
    assert(voltage.value > 0.0);
    const double volts = voltage.value * 1e-6;
    return DecibelMilliwatts{10.0 * std::log10(volts * volts / resistance_ohm) + 30.0};
}

DecibelMilliwatts noise_floor(Hertz bandwidth) {
    assert(bandwidth.value > 0.0);
    return DecibelMilliwatts{thermal_dbm_per_hertz + 10.0 * std::log10(bandwidth.value)};
}

}  // namespace dialplate

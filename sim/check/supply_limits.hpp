// How fast a microcontroller may run at a supply, and which supply a clock needs.
#pragma once

#include "sim/layout/layout.hpp"

#include <algorithm>
#include <optional>

namespace dialplate {

// ATmega328P data sheet, speed grades (MCU-09, from memory): straight from 10 MHz at 2.7 V to 20 MHz at
// 4.5 V; below, from 4 MHz at 1.8 V.
constexpr double slow_volts = 1.8, middle_volts = 2.7, fast_volts = 4.5;
constexpr double slow_hertz = 4e6, middle_hertz = 10e6, fast_hertz = 20e6;

[[nodiscard]] inline bool speed_grades_known(const Mcu& mcu) {
    return mcu.name.starts_with("ATmega328");
}

/// The greatest clock that is safe at a supply; none where the part's speed grades are not known.
[[nodiscard]] inline std::optional<Hertz> safe_clock(const Mcu& mcu, double supply_v) {
    if (!speed_grades_known(mcu)) return std::nullopt;
    const auto between = [&](double v0, double v1, double f0, double f1) {
        return Hertz{f0 + (f1 - f0) * (supply_v - v0) / (v1 - v0)};
    };
    if (supply_v < slow_volts) return Hertz{0.0};
    if (supply_v < middle_volts) return between(slow_volts, middle_volts, slow_hertz, middle_hertz);
    if (supply_v < fast_volts) return between(middle_volts, fast_volts, middle_hertz, fast_hertz);
    return Hertz{fast_hertz};
}

/// The least supply at which a clock is safe; none where it never is, or nothing is known.
[[nodiscard]] inline std::optional<double> least_supply(const Mcu& mcu, Hertz clock) {
    if (!speed_grades_known(mcu) || clock.value > fast_hertz) return std::nullopt;
    if (clock.value <= slow_hertz) return slow_volts;
    if (clock.value <= middle_hertz)
        return slow_volts + (clock.value - slow_hertz) * (middle_volts - slow_volts) /
                                (middle_hertz - slow_hertz);
    return middle_volts +
           (clock.value - middle_hertz) * (fast_volts - middle_volts) / (fast_hertz - middle_hertz);
}

}  // namespace dialplate

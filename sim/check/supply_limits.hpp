// How fast a microcontroller may run at a supply, and which supply a clock needs: its speed grades, with
// straight lines between them.
#pragma once

#include "sim/layout/layout.hpp"

#include <optional>

namespace dialplate {

/// The greatest clock that is safe at a supply, 0 below the least supply; none where the part's speed grades
/// are not known.
[[nodiscard]] inline std::optional<Hertz> safe_clock(const Mcu& mcu, double supply_v) {
    if (mcu.speed_grades.empty()) return std::nullopt;
    const SpeedGrade* below = nullptr;
    for (const SpeedGrade& grade : mcu.speed_grades) {
        if (supply_v < grade.volts) {
            if (below == nullptr) return Hertz{0.0};
            const double part = (supply_v - below->volts) / (grade.volts - below->volts);
            return Hertz{below->clock.value + (grade.clock.value - below->clock.value) * part};
        }
        below = &grade;
    }
    return below->clock;
}

/// The least supply at which a clock is safe; none where it never is, or nothing is known.
[[nodiscard]] inline std::optional<double> least_supply(const Mcu& mcu, Hertz clock) {
    const SpeedGrade* below = nullptr;
    for (const SpeedGrade& grade : mcu.speed_grades) {
        if (clock.value <= grade.clock.value) {
            if (below == nullptr) return grade.volts;
            const double part =
                (clock.value - below->clock.value) / (grade.clock.value - below->clock.value);
            return below->volts + (grade.volts - below->volts) * part;
        }
        below = &grade;
    }
    return std::nullopt;
}

}  // namespace dialplate

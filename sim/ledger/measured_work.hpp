// Written by tests/firmware/measure_work.cpp from firmware run under qemu; not edited by hand.
#pragma once

namespace dialplate::measured {

/// Instructions that the engine's own work takes on another family, for a cycle of the same on
/// the ATmega328P.
struct FamilyWork {
    const char* family;      ///< As in layouts/parts/mcus.json.
    double instructions;     ///< Median over the layouts.
    double least, greatest;  ///< Of them.
};

inline constexpr int work_layouts = 4;

inline constexpr FamilyWork family_work[] = {
    {"cortex-m0plus", 0.572, 0.487, 0.778},
    {"cortex-m3", 0.437, 0.376, 0.589},
};

}  // namespace dialplate::measured

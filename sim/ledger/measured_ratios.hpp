// Written by tests/firmware/measure_ratios.cpp from compiled code; not edited by hand.
#pragma once

namespace dialplate::measured {

/// How large the engine is for another family, against the same for the ATmega328P.
struct FamilyRatio {
    const char* family;  ///< As in layouts/parts/mcus.json.
    const char* toolchain;
    double engine;           ///< Median over the engines.
    double least, greatest;  ///< Of them.
    int state;               ///< Bytes of RAM of the engine with all parts, without its arena.
    int stack;               ///< Bytes of its longest path of calls from the service function on.
};

/// Engines compiled for each: with all parts, and with those of each example.
inline constexpr int ratio_engines = 6;

inline constexpr FamilyRatio family_ratios[] = {
    {"avr-mapped",
     "avr-g++ 5.4.0 -Os -flto -mrelax -mcall-prologues -mmcu=avrxmega3",
     0.963,
     0.944,
     0.983,
     85,
     393},
    {"cortex-m0plus",
     "arm-none-eabi-g++ 12.2.1 -Os -mcpu=cortex-m0plus",
     0.790,
     0.776,
     0.835,
     104,
     664},
    {"cortex-m3", "arm-none-eabi-g++ 12.2.1 -Os -mcpu=cortex-m3", 0.720, 0.688, 0.744, 104, 672},
};

}  // namespace dialplate::measured

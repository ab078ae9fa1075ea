// Which parts of the engine exist. The code emitted for a sketch brings a struct of its own with just
// what the layout uses, and the compiler drops the rest.
#pragma once

namespace dialplate {

struct EveryPart {
    static constexpr bool readout = true, key = true, legend = true, lamp = true, meter = true,
                          scale = true, picture = true;
    static constexpr bool plain = true, runs = true, segment = true, enlarged = true;
    static constexpr bool tuning_digit = true;  ///< A readout marks the digit that the knob turns.
    static constexpr bool rounded = true;       ///< Keys or lamps with round corners.
    static constexpr bool peak = true, blocks = true, marks = true, upright = true;  ///< Of meters.
    static constexpr bool tape = true;   ///< A scale whose tape moves.
    static constexpr bool touch = true;  ///< Keys answer a finger.
};

}  // namespace dialplate

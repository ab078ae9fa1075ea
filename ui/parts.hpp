// Which parts of the engine exist. The code emitted for a sketch brings a struct of its own with just
// what the layout uses, and the compiler drops the rest.
#pragma once

#include "ui/context.hpp"
#include "ui/edges.hpp"
#include "ui/rom.hpp"

namespace dialplate {

struct EveryPart {
    using Bytes = MemoryBytes;  ///< Where the image lies.
    static constexpr bool readout = true, box = true, meter = true, scale = true, picture = true;
    static constexpr bool plain = true, runs = true, segment = true, enlarged = true;
    static constexpr bool context = true;
    static constexpr bool smooth = true;  ///< Faces in tones.
    static constexpr bool tones_plain = true,
                          tones_context = true;  ///< Bitmaps in tones, by packing.
    static constexpr bool changed_runs = true;   ///< A digit becomes another by what differs.
    using Runs = RunsCore;                       ///< What reads `runs` for that.
    using Contexts = ContextCore;  ///< What decides the pixels of the packing `context`.
    static constexpr uint8_t context_columns = 253;  ///< Of its widest bitmap.
    static constexpr bool tuning_digit = true;  ///< A readout marks the digit that the knob turns.
    static constexpr bool sign = true;          ///< A readout shows negative numbers.
    static constexpr bool rounded = true;       ///< Boxes with round corners.
    static constexpr bool words = true;         ///< Lamps that show a choice in words.
    static constexpr bool touch = true;         ///< Keys answer a finger.
    static constexpr bool hold = true;          ///< Keys that are held or repeat.
    static constexpr bool pages = true;         ///< Keys that turn the page.
    static constexpr bool peak = true, blocks = true, upright = true;  ///< Of meters.
    static constexpr bool tape = true;  ///< A scale whose tape moves.
};

}  // namespace dialplate

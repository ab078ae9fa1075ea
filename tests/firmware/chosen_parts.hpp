// The parts of an engine by the bits of a number: bit n is the n-th part of ui/parts.hpp, in its order.
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/mcu/runs_core.hpp"

#include <stdint.h>

#ifndef CONTEXT_COLUMNS
#define CONTEXT_COLUMNS 64
#endif

/// @tparam bits   The parts.
/// @tparam Where  Where the image lies; see ui/rom.hpp.
template <int32_t bits, class Where>
struct ChosenParts {
    using Bytes = Where;
    static constexpr bool has(uint8_t part) { return (bits >> part & 1) != 0; }
    static constexpr bool readout = has(0), box = has(1), meter = has(2), scale = has(3),
                          picture = has(4), plain = has(5), runs = has(6), segment = has(7),
                          enlarged = has(8), tuning_digit = has(9), sign = has(10),
                          rounded = has(11), words = has(12), touch = has(13), hold = has(14),
                          pages = has(15), peak = has(16), blocks = has(17), upright = has(18),
                          tape = has(19), context = has(20), smooth = has(21),
                          tones_plain = has(22), tones_context = has(23), changed_runs = has(24);
    using Contexts = dialplate::FastContextCore;
    using Runs = dialplate::FastRunsCore;
    static constexpr uint8_t context_columns = CONTEXT_COLUMNS;
};

// How long a digit of a readout takes to become another one, drawn on the prototype for every pair of digits.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"

#include <optional>

namespace dialplate {

/// Over the pairs of digits that the last place of a readout can show: at most 90.
struct DigitChange {
    Milliseconds median{};
    Milliseconds worst{};
    Bytes bus_bytes{};  ///< Of the median pair.
    double share_of_limit =
        0;  ///< Time that the bus alone would need for it, as part of its time; 0..1.
};

/// Draws every change of the last digit of a readout alone: what else shows its value is left out. The time is
/// predicted as the ledger predicts all.
/// @param page, item  Of a readout.
/// @return Nothing if its range has one digit only.
/// @pre    `built` was made from `layout` without errors.
std::optional<DigitChange> digit_change(const Layout& layout,
                                        const BuiltImage& built,
                                        std::size_t page,
                                        std::size_t item);

}  // namespace dialplate

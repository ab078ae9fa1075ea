// Tuning and read-out arithmetic in whole numbers.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

/// The next frequency `detents` steps away: the first detent goes to the next multiple of the step
/// in its direction, the others by whole steps. Exact in integers; not clamped.
/// @pre step > 0. Source: standards RX-14 (exact in whole hertz); the alignment is custom.
[[nodiscard]] std::int64_t tuned(std::int64_t frequency, std::int64_t step, std::int64_t detents);

/// Decimal place of the digit that a step changes first: 0 for 1 to 9, 3 for 1000 to 9999.
/// @pre step > 0.
[[nodiscard]] int tuning_place(std::int64_t step);

/// The form of a read-out, as in a layout's `readout` item.
struct ReadOutForm {
    std::vector<int> groups{2, 3, 3};  ///< Digits per group, left to right.
    std::string separator = ".";
    int drop = 0;   ///< Trailing decimal digits not shown.
    int least = 1;  ///< Digits always shown; those to their left are blank when zero.
};

/// A number as a read-out shows it: always as wide as the form, blanks for leading zeros and for
/// separators with nothing to their left; digits beyond the form are lost on the left.
/// @pre number >= 0. Source: standards RX-15.
[[nodiscard]] std::string read_out(std::int64_t number, const ReadOutForm& form);

}  // namespace dialplate

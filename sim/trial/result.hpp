// What a trial tells: hits and misses, times, and where fingers land beside what they aim at.
#pragma once

#include "sim/trial/trial.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Of some touches. Those that were no slip (TrialTouch::near) are misses, but say nothing of the finger.
struct TouchFigures {
    int hits = 0, misses = 0;
    int landings = 0;  ///< Touches that offset and deviation are made from.
    std::optional<double>
        median_ms;  ///< Of the hits: since the task was shown or the touch before.
    double off_x_mm = 0,
           off_y_mm = 0;  ///< Mean from the key's middle, right and down; of 1 and more.
    /// Standard deviations about that mean, with n - 1 for a divisor; of 2 and more.
    std::optional<double> spread_x_mm, spread_y_mm;

    /// One figure for both ways, as a layout's `touch.scatter_mm` takes it: the root of the mean variance.
    [[nodiscard]] std::optional<double> sigma_mm() const;
};

struct KeyFigures {
    std::string key;  ///< JSON Pointer.
    std::string name;
    int page = 0;
    TouchFigures figures;
};

struct TrialResult {
    std::vector<KeyFigures> keys;  ///< By page and place in it; those that were aimed at.
    TouchFigures all;
};

[[nodiscard]] TrialResult result_of(const Trial& trial);

/// How it was touched, for the record.
struct TrialSetting {
    std::string layout_file;
    std::string date;  ///< ISO 8601, UTC.
    double finger_mm = 0;
    bool scattered = false;  ///< The window moved each touch at random.
};

/// As JSON; sim/trial/result.md has the grammar.
[[nodiscard]] std::string written(const Trial& trial, const TrialSetting& setting);

}  // namespace dialplate

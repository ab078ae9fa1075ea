// The status strip along the lower edge: what the checks found, what flash is left; or, while the file on
// disk is broken, where its mistake is.
#pragma once

#include "sim/desk/front.hpp"
#include "sim/layout/finding.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// Flash in bytes, as the ledger accounts for it.
struct FlashShare {
    std::int64_t capacity = 0;
    std::int64_t taken = 0;    ///< Boot loader and the rest of the program.
    std::int64_t display = 0;  ///< Engine, driver and image.
    std::int64_t left = 0;     ///< Negative: does not fit.
};

/// What the strip says.
struct Status {
    std::string file;
    std::vector<Finding> mistakes;  ///< Of the last save; empty when it could be read.
    bool shown_is_old = false;      ///< With mistakes: the picture is the last good one.
    std::optional<std::vector<Finding>> findings;  ///< Absent: not checked yet.
    int chosen = 0;  ///< Which of them is written out, counted around their number.
    std::optional<FlashShare> flash;  ///< Absent: not accounted yet.
    std::string zoom;                 ///< "x2"
    std::string head;                 ///< Not empty: the hint is a task, and this says which.
    std::string hint;  ///< Not empty: the side has findings and flash; this is said instead.
};

void draw_strip(Canvas& canvas, const Plan& plan, const Faces& faces, const Status& status);

/// A number of bytes with its thousands set apart: 12 345.
std::string grouped(std::int64_t number);

}  // namespace dialplate

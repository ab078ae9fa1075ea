// The checks: rules that measure a layout and hold it against a published figure. One file for each rule,
// one list of them (rules.cpp); a rule named "touch-size" is computed in touch_size.cpp.
#pragma once

#include "sim/check/rule.hpp"

#include <vector>

namespace dialplate {

/// Applies every rule, then the layout's waivers: a finding that a waiver accepts has `waived` filled
/// with the author's reason; a waiver that accepts nothing is itself a finding. When the layout's
/// thresholds are mistaken, these mistakes are all that is found.
/// @return Sorted by place, then by rule.
std::vector<Finding> check(const Subject& subject);

/// Whether a finding counts: it was not waived.
[[nodiscard]] inline bool counts(const Finding& finding) {
    return !finding.waived.has_value();
}

}  // namespace dialplate

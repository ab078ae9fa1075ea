// Findings that the author accepts on purpose.
#pragma once

#include "sim/layout/finding.hpp"
#include "sim/layout/layout.hpp"

#include <vector>

namespace dialplate {

/// Whether a waiver speaks of a finding: the same rule, and its item or a member of it. A waiver without
/// an item accepts all findings of its rule. A mistake in the document (`error`) cannot be waived.
bool accepts(const Waiver& waiver, const Finding& finding);

/// Fills `waived` of the findings that a waiver accepts with its reason, and appends a finding for
/// every waiver that accepts none.
void apply_waivers(const Layout& layout, std::vector<Finding>& found);

}  // namespace dialplate

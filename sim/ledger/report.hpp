// The ledger in words and figures, for people.
#pragma once

#include "sim/ledger/ledger.hpp"

#include <string>

namespace dialplate {

/// An aligned account in plain text, at most 80 columns for names of ordinary length: flash with a
/// stacked bar, RAM, time. Ends with a line feed.
/// @param colour  Whether to emphasise with terminal colours (ECMA-48).
std::string report_text(const Layout& layout, const Ledger& ledger, bool colour);

}  // namespace dialplate

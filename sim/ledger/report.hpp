// The ledger in words and figures for people, and as JSON for programs.
#pragma once

#include "sim/ledger/ledger.hpp"

#include <nlohmann/json.hpp>

#include <string>

namespace dialplate {

/// An aligned account in plain text, at most 80 columns for names of ordinary length: flash with a
/// stacked bar, RAM, time. Ends with a line feed.
/// @param colour  Whether to emphasise with terminal colours (ECMA-48).
std::string report_text(const Layout& layout, const Ledger& ledger, bool colour);

/// The same as JSON; bytes, cycles and milliseconds as numbers.
nlohmann::ordered_json report_json(const Layout& layout, const Ledger& ledger);

}  // namespace dialplate

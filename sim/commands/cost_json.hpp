// The ledger as JSON.
#pragma once

#include "sim/ledger/ledger.hpp"

#include <nlohmann/json.hpp>

namespace dialplate {

/// Bytes, cycles and milliseconds as numbers; what is not exact says on what it stands.
nlohmann::ordered_json cost_json(const Layout& layout, const Ledger& ledger);

}  // namespace dialplate

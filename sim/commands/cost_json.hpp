// The ledger as JSON.
#pragma once

#include "sim/ledger/ledger.hpp"
#include "sim/ledger/packing_trade.hpp"

#include <nlohmann/json.hpp>

#include <vector>

namespace dialplate {

/// Bytes, cycles and milliseconds as numbers; what is not exact says on what it stands.
nlohmann::ordered_json cost_json(const Layout& layout, const Ledger& ledger);

/// Bytes against milliseconds: for each face the ways to pack it, with times where a readout has it.
nlohmann::ordered_json packings_json(const Layout& layout, const std::vector<FaceTrade>& trades);

}  // namespace dialplate

// Bytes against milliseconds as text, for `dialplate cost --packings`.
#pragma once

#include "sim/ledger/packing_trade.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// A line for each way to pack each face; the way that the layout has is starred.
std::string trade_text(const Layout& layout, const std::vector<FaceTrade>& trades);

}  // namespace dialplate

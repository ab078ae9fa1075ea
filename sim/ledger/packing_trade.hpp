// Bytes against milliseconds: what a layout takes in flash and in time with each packing of each of its faces.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/ledger/digit_change.hpp"

#include <optional>
#include <string>
#include <vector>

namespace dialplate {

/// The layout with one face packed another way; packings that are chosen are chosen anew.
struct PackingTrade {
    std::string packing{};  ///< "plain", "runs", "context", "segment".
    bool by_what_differs =
        false;            ///< Digits become each other by what differs, not as whole cells.
    bool chosen = false;  ///< As the layout has it.
    Bytes flash{};        ///< Of the whole display: engine with its decoders, driver and image.
    std::optional<DigitChange> digit{};  ///< Of a readout in this face.
};

/// The ways to pack one face.
struct FaceTrade {
    FaceId face = 0;
    std::string item{};  ///< The readout whose digits were timed; empty: no readout has this face.
    std::vector<PackingTrade> ways{};  ///< In order of plain, runs, context; whole cells first.
};

/// Every way in which a face can be packed, built and accounted for; digits by what differs where the engine would
/// draw them so when asked for speed. A face that no readout has is weighed only.
/// @pre `built` was made from `layout` without errors.
FaceTrade packing_trade(const Layout& layout, const BuiltImage& built, FaceId face);

/// The same of all faces that are shown.
std::vector<FaceTrade> packing_trades(const Layout& layout, const BuiltImage& built);

}  // namespace dialplate

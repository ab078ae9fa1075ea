#include "sim/ledger/packing_trade.hpp"

#include "sim/ledger/ledger.hpp"

#include <algorithm>
#include <utility>

namespace dialplate {
namespace {

/// Where a readout stands.
struct Spot {
    std::size_t page = 0, item = 0;
};

std::optional<Spot> readout_in(const Layout& layout, FaceId face) {
    for (std::size_t page = 0; page < layout.pages.size(); ++page) {
        const std::vector<Item>& items = layout.pages[page].items;
        for (std::size_t item = 0; item < items.size(); ++item)
            if (items[item].kind == ItemKind::readout && items[item].readout.face == face)
                return Spot{page, item};
    }
    return std::nullopt;
}

const FaceCost* cost_of(const BuiltImage& built, FaceId face) {
    const auto found = std::find_if(built.faces.begin(),
                                    built.faces.end(),
                                    [face](const FaceCost& cost) { return cost.face == face; });
    return found == built.faces.end() ? nullptr : &*found;
}

/// The layout with a packing of its own for a face. The author's times are put aside; asked for what differs,
/// its readouts want to be faster than any whole cell.
Layout packed(const Layout& layout, FaceId face, PackingWish wish, bool by_what_differs) {
    Layout changed = layout;
    changed.faces[static_cast<std::size_t>(face)].packing = wish;
    for (Page& page : changed.pages) {
        for (Item& item : page.items) {
            if (item.kind != ItemKind::readout || item.readout.face != face) continue;
            item.readout.within =
                by_what_differs ? std::optional(Milliseconds{0.001}) : std::nullopt;
        }
    }
    return changed;
}

std::optional<PackingTrade> weighed(const Layout& layout,
                                    FaceId face,
                                    const std::optional<Spot>& spot,
                                    bool by_what_differs) {
    const Building building = build_image(layout);
    if (!building.image) return std::nullopt;  // it does not fit this packing
    const FaceCost* const cost = cost_of(*building.image, face);
    if (cost == nullptr || cost->changed_runs != by_what_differs) return std::nullopt;
    PackingTrade trade{.packing = cost->packing, .by_what_differs = by_what_differs};
    trade.flash = flash_account(layout, *building.image).total;
    if (spot) trade.digit = digit_change(layout, *building.image, spot->page, spot->item);
    return trade;
}

}  // namespace

FaceTrade packing_trade(const Layout& layout, const BuiltImage& built, FaceId face) {
    FaceTrade trade{.face = face};
    const FaceCost* const as_it_is = cost_of(built, face);
    if (as_it_is == nullptr) return trade;
    const Face& wanted = layout.faces[static_cast<std::size_t>(face)];
    const std::optional<Spot> spot = readout_in(layout, face);
    if (spot) trade.item = layout.pages[spot->page].items[spot->item].name;
    std::vector<PackingWish> wishes = {PackingWish::plain, PackingWish::runs, PackingWish::context};
    if (wanted.kind == FaceKind::segment) wishes = {PackingWish::automatic};
    for (const PackingWish wish : wishes) {
        if (wanted.smooth && wish == PackingWish::runs) continue;
        for (const bool by_what_differs : {false, true}) {
            if (by_what_differs && (!spot || wanted.smooth || wish == PackingWish::context))
                continue;
            std::optional<PackingTrade> way =
                weighed(packed(layout, face, wish, by_what_differs), face, spot, by_what_differs);
            if (!way) continue;
            way->chosen =
                way->packing == as_it_is->packing && way->by_what_differs == as_it_is->changed_runs;
            trade.ways.push_back(std::move(*way));
        }
    }
    return trade;
}

std::vector<FaceTrade> packing_trades(const Layout& layout, const BuiltImage& built) {
    std::vector<FaceTrade> trades;
    for (const FaceCost& cost : built.faces)
        trades.push_back(packing_trade(layout, built, cost.face));
    return trades;
}

}  // namespace dialplate

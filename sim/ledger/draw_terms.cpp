#include "sim/ledger/draw_terms.hpp"

#include <algorithm>

namespace dialplate {

DrawnAmount amount_of(const Update& update, const Page& page) {
    DrawnAmount amount;
    amount.pixels = update.sent.pixels;
    amount.windows = update.sent.windows;
    amount.rows = update.runs.rows;
    amount.parts = update.runs.parts;
    amount.part_pixels = update.runs.part_pixels;
    amount.slices = update.slices;
    // Legends and frames are part of the ground that never changes.
    amount.items = std::count_if(page.items.begin(), page.items.end(), [](const Item& item) {
        return item.kind != ItemKind::legend && item.kind != ItemKind::frame;
    });
    return amount;
}

std::array<double, draw_term_count> draw_terms(const DrawnAmount& amount) {
    return {static_cast<double>(amount.pixels - amount.part_pixels),
            static_cast<double>(amount.part_pixels),
            static_cast<double>(amount.rows),
            static_cast<double>(amount.parts),
            static_cast<double>(amount.windows),
            static_cast<double>(amount.items),
            1.0};
}

}  // namespace dialplate

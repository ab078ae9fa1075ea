#include "sim/image/arena.hpp"

namespace dialplate {

ShownParts shown_parts(const Layout& layout) {
    ShownParts parts{.tuning_digit = false, .peak = false};
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind == ItemKind::readout && item.readout.tuning) parts.tuning_digit = true;
            if (item.kind == ItemKind::meter && item.meter.peak) parts.peak = true;
        }
    }
    return parts;
}

int shown_bytes(const Item& item, ShownParts parts) {
    switch (item.kind) {
        case ItemKind::readout:
            return parts.tuning_digit ? 5 : 4;
        case ItemKind::key:
        case ItemKind::lamp:
            return 1;
        case ItemKind::meter:
            return parts.peak ? 7 : 2;
        case ItemKind::scale:
            return 4;
        case ItemKind::legend:
        case ItemKind::picture:
        case ItemKind::frame:
            break;
    }
    return 0;
}

}  // namespace dialplate

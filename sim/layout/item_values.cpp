#include "sim/layout/item_values.hpp"

namespace dialplate {

std::vector<ValueId> values_of(const Item& item) {
    std::vector<ValueId> values;
    switch (item.kind) {
        case ItemKind::readout:
            values.push_back(item.readout.value);
            if (item.readout.tuning) values.push_back(*item.readout.tuning);
            break;
        case ItemKind::key:
            if (item.key.active_value) values.push_back(*item.key.active_value);
            if (item.key.enabled_by) values.push_back(*item.key.enabled_by);
            break;
        case ItemKind::lamp:
            values.push_back(item.lamp.value);
            break;
        case ItemKind::meter:
            values.push_back(item.meter.value);
            break;
        case ItemKind::scale:
            values.push_back(item.scale.value);
            break;
        case ItemKind::legend:
        case ItemKind::picture:
        case ItemKind::frame:
            break;
    }
    return values;
}

}  // namespace dialplate

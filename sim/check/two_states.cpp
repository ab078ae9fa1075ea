#include "sim/check/two_states.hpp"

namespace dialplate {

std::optional<TwoStates> states_of(const Item& item, const Layout& layout) {
    if (item.kind == ItemKind::lamp && item.lamp.when) {
        const Lamp& lamp = item.lamp;
        return TwoStates{.on = lamp.lit,
                         .off = lamp.unlit,
                         .has_text = !lamp.text.empty(),
                         .has_edge = lamp.edge > 0,
                         .words = "lit and unlit"};
    }
    if (item.kind == ItemKind::key && item.key.active_value) {
        const Look& look = layout.looks.at(static_cast<std::size_t>(item.key.look));
        return TwoStates{.on = look.active,
                         .off = look.idle,
                         .has_text = !item.key.text.empty(),
                         .has_edge = item.key.edge > 0,
                         .words = "active and idle"};
    }
    return std::nullopt;
}

}  // namespace dialplate

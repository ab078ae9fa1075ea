// The keys of the window: what each does, in one table, which the list on the screen is made from too.
#pragma once

#include "sim/desk/front.hpp"

#include <optional>

namespace dialplate {

/// What a person asks the window for.
enum class Order {
    tune,     ///< by detents
    page,     ///< next or previous
    palette,  ///< next
    zoom,     ///< one more or one less
    fit,      ///< the greatest zoom that fits
    finding,  ///< next or previous
    keys,     ///< show or hide the list
    hide,     ///< hide it
    quit,
};

struct Stroke {
    int key = 0;  ///< SDL_Keycode.
    bool shift = false, control = false;
};

struct Ordered {
    Order order = Order::tune;
    int by = 0;
};

/// What a key stands for; nothing for most.
std::optional<Ordered> order_of(const Stroke& stroke);

/// The list of keys and of what the mouse does, over the middle of the panel.
void draw_keys(Canvas& canvas, const Plan& plan, const Faces& faces);

}  // namespace dialplate

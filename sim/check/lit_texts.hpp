// The texts of a layout in the light of its room.
#pragma once

#include "sim/check/page_colours.hpp"
#include "sim/colour/glass_light.hpp"

#include <vector>

namespace dialplate {

/// A text and the item that shows it; of texts of an item with one face and the same colours the first.
struct LitText {
    const Item* item = nullptr;
    ShownText text;
};
std::vector<LitText> texts_in(const Layout& layout);

/// Luminances of ink and ground in a palette, cd/m2, reflection included.
struct InkAndGround {
    double ink = 0, ground = 0;
};
InkAndGround luminances(const Layout& layout,
                        const GlassLight& light,
                        const ShownText& text,
                        std::size_t palette);

/// The palette that somebody would choose in this light: the one whose faintest text stands out most.
std::size_t palette_for_light(const Layout& layout,
                              const GlassLight& light,
                              const std::vector<LitText>& texts);

}  // namespace dialplate

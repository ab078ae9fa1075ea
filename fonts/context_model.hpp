// The model of the packing `context`: what a decision is expected to be, from the pixels decided before it
// (ui/image.md, "Contexts").
#pragma once

#include "fonts/face.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace dialplate::fonts {

/// Walks the decisions of a bitmap in their order. `decide(context, wish)` is told the context, below
/// context_model::contexts, and what the bitmap has there; it returns what is taken, which a decoder knows
/// better than the bitmap.
/// @return The bitmap as it was decided.
template <class Decide>
Bitmap walk_contexts(int width, int height, const Bitmap* wish, Decide decide) {
    Bitmap seen{width, height, {}};
    const auto columns = static_cast<std::size_t>(width);
    seen.pixels.reserve(columns * static_cast<std::size_t>(height));
    // What stands above the first row: ground, and ink above that, so that the top edge has contexts of
    // its own. To the left stands ink in both, to mark that edge too, to the right ground.
    std::vector<std::uint8_t> above(columns, 0), above_that(columns, 1);
    const auto at = [](const std::vector<std::uint8_t>& row, int x) -> unsigned {
        if (x < 0) return 1;
        return x >= static_cast<int>(row.size()) ? 0U : row[static_cast<std::size_t>(x)];
    };
    unsigned repeats = 0, bank = 0;
    for (int y = 0; y < height; ++y) {
        bool repeated = false;
        if (wish != nullptr) {
            const auto from = wish->pixels.begin() + static_cast<std::ptrdiff_t>(y) * width;
            repeated = std::equal(above.begin(), above.end(), from);
        }
        repeated = decide(context_model::pixels + bank + repeats, repeated);
        std::vector<std::uint8_t> row = above;
        if (repeated) {
            if (repeats < context_model::most_repeats) ++repeats;
        } else {
            repeats = 0;
            bank = 0;
            unsigned left = 0;
            for (int x = 0; x < width; ++x) {
                const unsigned context = at(above, x - 2) << 6 | at(above, x - 1) << 5 |
                                         at(above, x) << 4 | at(above, x + 1) << 3 |
                                         at(above_that, x - 1) << 2 | at(above_that, x) << 1 | left;
                left = decide(context, wish != nullptr && wish->ink(x, y)) ? 1 : 0;
                if (left != 0) bank = context_model::bank;
                row[static_cast<std::size_t>(x)] = static_cast<std::uint8_t>(left);
            }
        }
        seen.pixels.insert(seen.pixels.end(), row.begin(), row.end());
        above_that = above;
        above = std::move(row);
    }
    return seen;
}

}  // namespace dialplate::fonts

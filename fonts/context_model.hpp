// The model of the packing `context`: what a decision is expected to be, from the pixels decided before it
// (ui/image.md, "Contexts").
#pragma once

#include "fonts/face.hpp"
#include "fonts/tones.hpp"
#include "ui/image_format.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <utility>
#include <vector>

namespace dialplate::fonts {

using BitRow = std::vector<std::uint8_t>;

/// Walks the decisions of a row from the left. In both rows above, ink stands to the left of the bitmap, ground to
/// the right.
/// @param first  Of its contexts.
/// @param wish   What the bitmap has in a column.
template <class Wish, class Decide>
BitRow walk_row(
    const BitRow& above, const BitRow& above_that, unsigned first, Wish wish, Decide& decide) {
    const auto at = [](const BitRow& row, std::size_t column, int beside) -> unsigned {
        const auto x = static_cast<std::ptrdiff_t>(column) + beside;
        if (x < 0) return 1;
        return x >= std::ssize(row) ? 0U : row[static_cast<std::size_t>(x)];
    };
    BitRow row;
    unsigned left = 0;
    for (std::size_t x = 0; x < above.size(); ++x) {
        // Of the row above that a decoder has forgotten the last column when it gets there.
        const unsigned straight = x + 1 < above.size() ? at(above_that, x, 0) : 0U;
        const unsigned context = left << 6 | at(above, x, 1) << 5 | at(above, x, 0) << 4 |
                                 at(above, x, -1) << 3 | at(above, x, -2) << 2 | straight << 1 |
                                 at(above_that, x, -1);
        left = decide(first + context, wish(static_cast<int>(x))) ? 1 : 0;
        row.push_back(static_cast<std::uint8_t>(left));
    }
    return row;
}

/// Walks the decisions of a bitmap in their order. `decide(context, wish)` is told the context, below
/// context_model::all, and what the bitmap has there; it returns what is taken, which a decoder knows
/// better than the bitmap.
/// @return The bitmap as it was decided.
template <class Decide>
Bitmap walk_contexts(int width, int height, bool tones, const Bitmap* wish, Decide decide) {
    Bitmap seen{width, height, {}, tones};
    const auto columns = static_cast<std::size_t>(width);
    seen.pixels.reserve(columns * static_cast<std::size_t>(height));
    // What stands above the first row: ground, and ink above that, so that the top edge has contexts of
    // its own. To the left stands ink in both, to mark that edge too, to the right ground.
    BitRow above(columns, 0), above_that(columns, 1), last(columns, 0);
    unsigned repeats = 0, bank = 0;
    for (int y = 0; y < height; ++y) {
        const auto wished = [&](int x) -> unsigned { return wish == nullptr ? 0 : wish->at(x, y); };
        bool repeated = wish != nullptr;
        for (std::size_t x = 0; repeated && x < columns; ++x)
            repeated = wished(static_cast<int>(x)) == last[x];
        repeated = decide(context_model::pixels + bank + repeats, repeated);
        if (repeated) {
            if (repeats < context_model::most_repeats) ++repeats;
            above_that = above;
        } else {
            repeats = 0;
            const auto inked = [&](int x) {
                return tones ? nearer_to_ink(wished(x)) : wished(x) != 0;
            };
            BitRow row = walk_row(above, above_that, 0, inked, decide);
            above_that = std::exchange(above, std::move(row));
            last = above;
            bank =
                std::find(above.begin(), above.end(), 1) != above.end() ? context_model::bank : 0;
            if (tones) {
                // The second bits know the first ones, of their row as if it stood above, and of the row before.
                const auto in_between = [&](int x) { return between(wished(x)); };
                const BitRow middle =
                    walk_row(above, above_that, context_model::middle, in_between, decide);
                for (std::size_t x = 0; x < columns; ++x)
                    last[x] = tone_of(above[x] != 0, middle[x] != 0);
            }
        }
        seen.pixels.insert(seen.pixels.end(), last.begin(), last.end());
    }
    return seen;
}

}  // namespace dialplate::fonts

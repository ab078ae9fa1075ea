#include "fonts/code_runs.hpp"

#include "fonts/ink_box.hpp"

#include <algorithm>
#include <array>

namespace dialplate::fonts {
namespace {

// Calls row_repeats() for a row that equals the one above, else row_differs(is_first_row) and then
// run(ink, length) for each of its runs.
template <class Repeats, class Differs, class Run>
void walk_runs(const Bitmap& bitmap, Repeats row_repeats, Differs row_differs, Run run) {
    for (int y = 0; y < bitmap.height; ++y) {
        const auto row = bitmap.pixels.begin() + static_cast<std::ptrdiff_t>(y) * bitmap.width;
        const auto end = row + bitmap.width;
        if (y > 0 && std::equal(row, end, row - bitmap.width)) {
            row_repeats();
            continue;
        }
        row_differs(y == 0);
        std::uint8_t ink = 0;
        for (auto from = row; from != end; ink ^= 1) {
            const auto to =
                std::find_if(from, end, [ink](std::uint8_t pixel) { return pixel != ink; });
            run(ink != 0, static_cast<unsigned>(to - from));
            from = to;
        }
    }
}

using Bits = std::array<std::size_t, rice_max + 1>;

// Bits of one bitmap: flags apart, runs by colour and parameter.
struct Weight {
    std::size_t flags = 0;
    Bits white{};
    Bits black{};
};

Weight weigh(const Bitmap& bitmap) {
    Weight weight;
    walk_runs(
        bitmap,
        [&] { ++weight.flags; },
        [&](bool first) { weight.flags += first ? 0 : 1; },
        [&](bool ink, unsigned length) {
            Bits& bits = ink ? weight.black : weight.white;
            for (std::size_t k = 0; k < bits.size(); ++k)
                bits[k] += (length >> k) + 1 + k;
        });
    return weight;
}

}  // namespace

RunParameters best_parameters(const std::vector<const Bitmap*>& bitmaps) {
    std::vector<Weight> weights;
    weights.reserve(bitmaps.size());
    for (const Bitmap* bitmap : bitmaps)
        weights.push_back(weigh(*bitmap));

    RunParameters best;
    std::size_t fewest = static_cast<std::size_t>(-1);
    for (int white = 0; white <= rice_max; ++white) {
        for (int black = 0; black <= rice_max; ++black) {
            std::size_t bytes = 0;
            for (const Weight& weight : weights)
                bytes += (weight.flags + weight.white[static_cast<std::size_t>(white)] +
                          weight.black[static_cast<std::size_t>(black)] + 7) /
                         8;
            if (bytes < fewest) {
                fewest = bytes;
                best = {white, black};
            }
        }
    }
    return best;
}

void write_runs(BitWriter& to, const Bitmap& bitmap, RunParameters parameters) {
    walk_runs(
        bitmap,
        [&] { to.put(true); },
        [&](bool first) {
            if (!first) to.put(false);
        },
        [&](bool ink, unsigned length) {
            to.put_rice(length, ink ? parameters.black : parameters.white);
        });
}

std::optional<Bitmap> read_runs(BitReader& from, int width, int height, RunParameters parameters) {
    if (parameters.white > rice_max || parameters.black > rice_max) return std::nullopt;
    Bitmap bitmap = blank(width, height);
    for (int y = 0; y < height; ++y) {
        const auto row = bitmap.pixels.begin() + static_cast<std::ptrdiff_t>(y) * width;
        if (y > 0 && from.get()) {
            std::copy(row - width, row, row);
            continue;
        }
        std::uint8_t ink = 0;
        int x = 0;
        while (x < width && !from.exhausted()) {
            const unsigned run = from.get_rice(ink != 0 ? parameters.black : parameters.white);
            // Only the background run that opens a row may be empty.
            const bool may_be_empty = x == 0 && ink == 0;
            if (run > static_cast<unsigned>(width - x) || (run == 0 && !may_be_empty))
                return std::nullopt;
            std::fill_n(row + x, run, ink);
            x += static_cast<int>(run);
            ink ^= 1;
        }
    }
    if (from.exhausted()) return std::nullopt;
    return bitmap;
}

}  // namespace dialplate::fonts

#include "sim/image/paint_map.hpp"

#include <algorithm>
#include <tuple>

namespace dialplate {

PaintMap::PaintMap(int width, int height, PaintId ground)
    : width_(width),
      height_(height),
      paints_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height),
              static_cast<std::int16_t>(ground)) {}

void PaintMap::set(const Box& box, std::int16_t to) {
    for (int y = std::max(0, box.y); y < std::min(height_, box.bottom()); ++y) {
        for (int x = std::max(0, box.x); x < std::min(width_, box.right()); ++x) {
            paints_[place(x, y)] = to;
        }
    }
}

void PaintMap::fill(const Box& box, PaintId paint) {
    set(box, static_cast<std::int16_t>(paint));
}

void PaintMap::take(const Box& box) {
    set(box, taken);
}

int PaintMap::at(int x, int y) const {
    return paints_[place(std::clamp(x, 0, width_ - 1), std::clamp(y, 0, height_ - 1))];
}

// At each pixel not yet covered, the rectangle that reaches as far as it can in one direction, then in
// the other. Not always the fewest, but each direction suits some pages.
std::vector<PaintMap::Fill> PaintMap::cut(bool wide_first) const {
    std::vector<Fill> fills;
    std::vector<std::int16_t> left = paints_;
    for (int y = 0; y < height_; ++y) {
        for (int x = 0; x < width_; ++x) {
            const std::int16_t paint = left[place(x, y)];
            if (paint == taken) continue;
            int right = x + 1, below = y + 1;
            const auto column_fits = [&](int column) {
                for (int row = y; row < below; ++row) {
                    if (left[place(column, row)] != paint) return false;
                }
                return true;
            };
            const auto row_fits = [&](int row) {
                for (int column = x; column < right; ++column) {
                    if (left[place(column, row)] != paint) return false;
                }
                return true;
            };
            for (const bool wide : {wide_first, !wide_first}) {
                while (wide && right < width_ && column_fits(right))
                    ++right;
                while (!wide && below < height_ && row_fits(below))
                    ++below;
            }
            for (int row = y; row < below; ++row) {
                std::fill(left.begin() + static_cast<std::ptrdiff_t>(place(x, row)),
                          left.begin() + static_cast<std::ptrdiff_t>(place(x, row)) + (right - x),
                          taken);
            }
            fills.push_back({paint, {x, y, right - x, below - y}});
        }
    }
    return fills;
}

std::vector<PaintMap::Fill> PaintMap::rectangles() const {
    std::vector<Fill> wide = cut(true), tall = cut(false);
    std::vector<Fill>& fills = wide.size() <= tall.size() ? wide : tall;
    std::stable_sort(
        fills.begin(), fills.end(), [](const Fill& a, const Fill& b) { return a.paint < b.paint; });
    return std::move(fills);
}

}  // namespace dialplate

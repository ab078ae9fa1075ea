// All of a page that never changes, but its texts: one paint a pixel, then cut into rectangles.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstdint>
#include <vector>

namespace dialplate {

class PaintMap {
public:
    static constexpr std::int16_t taken = -1;  ///< Belongs to an item or a text.

    PaintMap(int width, int height, PaintId ground);

    /// Paints what lies inside the map.
    void fill(const Box& box, PaintId paint);
    /// Takes pixels out: an item or a text will draw them.
    void take(const Box& box);
    /// The paint of a pixel; `taken`; or the nearest inside for a place outside.
    [[nodiscard]] int at(int x, int y) const;

    struct Fill {
        PaintId paint;
        Box box;
    };
    /// The painted pixels as few rectangles that do not overlap, paint by paint, then from the top.
    [[nodiscard]] std::vector<Fill> rectangles() const;

private:
    [[nodiscard]] std::vector<Fill> cut(bool wide_first) const;
    void set(const Box& box, std::int16_t to);
    [[nodiscard]] std::size_t place(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(x);
    }

    int width_, height_;
    std::vector<std::int16_t> paints_;
};

}  // namespace dialplate

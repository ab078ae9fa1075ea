// A picture in memory and the few shapes that the window is made of. Edges are smoothed by coverage:
// a pixel that a shape covers in part takes that part of its colour.
#pragma once

#include <cstdint>
#include <vector>

namespace dialplate {

/// A colour of the window: 0xRRGGBB.
using Colour = std::uint32_t;

/// `part` of `over` on `under`, 0..1.
Colour mix(Colour under, Colour over, double part);

/// A rectangle of the window in screen pixels; half-open, origin at the top left.
struct Area {
    int x = 0, y = 0, width = 0, height = 0;
    [[nodiscard]] constexpr int right() const { return x + width; }
    [[nodiscard]] constexpr int bottom() const { return y + height; }
    [[nodiscard]] constexpr bool holds(int px, int py) const {
        return px >= x && px < right() && py >= y && py < bottom();
    }
    [[nodiscard]] constexpr bool empty() const { return width <= 0 || height <= 0; }
    friend constexpr bool operator==(const Area&, const Area&) = default;
};

/// What two areas share; empty when nothing.
Area common_part(const Area& a, const Area& b);
/// `area` with `by` more on every side.
Area grown(const Area& area, int by);

/// A circle: centre on the pixel grid's lines (a whole number is a pixel's left or top edge).
struct Circle {
    double x = 0.0, y = 0.0, radius = 0.0;
    friend constexpr bool operator==(const Circle&, const Circle&) = default;
};

class Canvas {
public:
    Canvas() = default;
    Canvas(int width, int height);

    [[nodiscard]] int width() const { return width_; }
    [[nodiscard]] int height() const { return height_; }
    [[nodiscard]] Area all() const { return {0, 0, width_, height_}; }
    /// Row-major, width() a row, 0x00RRGGBB.
    [[nodiscard]] std::uint32_t* pixels() { return pixels_.data(); }
    [[nodiscard]] Colour at(int x, int y) const;

    // Whatever lies outside the canvas is not drawn.
    void set(int x, int y, Colour colour);
    void blend(int x, int y, Colour colour, double part);
    void fill(const Area& area, Colour colour);
    /// From `top` to `bottom`, row by row.
    void shade(const Area& area, Colour top, Colour bottom);
    /// A box whose corners are quarter circles.
    void rounded(const Area& area, double radius, Colour colour);
    /// The same, from `top` to `bottom`, row by row.
    void rounded(const Area& area, double radius, Colour top, Colour bottom);
    /// An edge inside `area`, `line` pixels wide.
    void outline(const Area& area, int line, Colour colour);
    void disc(const Circle& circle, Colour colour);
    void ring(const Circle& circle, double line, Colour colour);
    /// Copies `area` of `from`, a canvas of the same size.
    void restore(const Canvas& from, const Area& area);

private:
    int width_ = 0;
    int height_ = 0;
    std::vector<std::uint32_t> pixels_;
};

}  // namespace dialplate

// Boxes on the glass, moved by hand: grips, snapping, aligning, distributing. Pure geometry in glass pixels.
#pragma once

#include "sim/layout/layout.hpp"

#include <optional>
#include <span>
#include <vector>

namespace dialplate {

/// Pixels that something moves, right and down.
struct Shift {
    int x = 0, y = 0;
    friend constexpr bool operator==(const Shift&, const Shift&) = default;
};

/// The smallest box around all. @pre Not empty.
Box around(std::span<const Box> boxes);
[[nodiscard]] constexpr Box moved(const Box& box, const Shift& by) {
    return {box.x + by.x, box.y + by.y, box.width, box.height};
}
[[nodiscard]] constexpr bool overlap(const Box& a, const Box& b) {
    return a.x < b.right() && b.x < a.right() && a.y < b.bottom() && b.y < a.bottom();
}

/// The eight grips of a box: on which sides they pull, -1 left or top, 1 right or bottom, 0 neither.
struct Pull {
    int x = 0, y = 0;
    friend constexpr bool operator==(const Pull&, const Pull&) = default;
};
inline constexpr Pull pulls[] = {
    {-1, -1}, {0, -1}, {1, -1}, {1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}};

/// A box pulled by a grip; never smaller than one pixel, and its other side stays.
Box pulled(const Box& box, const Pull& pull, const Shift& by);

/// Keeps a box on the glass: moved back inside, cut if it is larger. Layouts begin at 0.
Box kept_on(const Box& glass, Box box);

enum class Edge { left, middle, right, top, centre, bottom };

/// Boxes lined up on one edge of what surrounds them all.
std::vector<Box> aligned(std::vector<Box> boxes, Edge edge);
/// Boxes with the same gap between neighbours, the outer ones staying; the gaps differ by one pixel at most
/// where they cannot be the same.
std::vector<Box> distributed(std::vector<Box> boxes, bool across);

/// Where a moving box catches.
struct Catch {
    Shift shift;  ///< To add to the box.
    std::optional<int> line_x,
        line_y;  ///< The line it caught on, for drawing: pixel's left or top edge.
};

/// Distance of a grid's lines in pixels, from the top left corner of the glass; not always a whole number, since
/// a grid may be one of millimetres. 0: no grid.
struct GridPitch {
    double x = 0.0, y = 0.0;
    friend constexpr bool operator==(const GridPitch&, const GridPitch&) = default;
};
/// The pixel on which a line of the grid lies.
[[nodiscard]] int grid_line(double pitch, int number);
/// The line that is nearest to a pixel.
[[nodiscard]] int nearest_grid_line(double pitch, int pixel);

/// What a box may catch on.
struct Lines {
    std::vector<int> x, y;  ///< Edges and centres of other boxes, and of the glass.
    GridPitch grid{};       ///< Edges catch on it where no line is near.
};
Lines lines_of(const Box& glass, std::span<const Box> others, const GridPitch& grid);

/// The nearest line within `reach` pixels for each direction.
/// @param pull  Which sides of the box move; {0, 0}: all of it.
Catch caught(const Box& box, const Pull& pull, const Lines& lines, int reach);

}  // namespace dialplate

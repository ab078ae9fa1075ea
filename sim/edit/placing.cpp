#include "sim/edit/placing.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace dialplate {
namespace {

/// One direction of a box, so that across and down are computed by the same lines.
struct Span {
    int begin = 0, length = 0;
    [[nodiscard]] int end() const { return begin + length; }
};

Span across(const Box& box) {
    return {box.x, box.width};
}
Span down(const Box& box) {
    return {box.y, box.height};
}

Span pulled(const Span& span, int pull, int by) {
    if (pull < 0) {
        const int begin = std::min(span.begin + by, span.end() - 1);
        return {begin, span.end() - begin};
    }
    if (pull > 0) return {span.begin, std::max(span.length + by, 1)};
    return span;
}

Span kept(const Span& room, Span span) {
    span.length = std::min(span.length, room.length);
    span.begin = std::clamp(span.begin, room.begin, room.end() - span.length);
    return span;
}

struct Reach {
    int shift = 0;
    std::optional<int> line;
};

/// @param points  Of the moving box: where it may catch.
Reach nearest(std::span<const int> points, const std::vector<int>& lines, double grid, int reach) {
    Reach best;
    int least = reach + 1;
    for (const int point : points)
        for (const int line : lines)
            if (const int away = std::abs(line - point); away < least) {
                least = away;
                best = {line - point, line};
            }
    if (best.line || grid <= 0.0 || points.empty()) return best;
    // The grid catches the first point, an edge, wherever it is: that is what a grid is for.
    const int point = points.front();
    const int line = nearest_grid_line(grid, point);
    return {line - point, std::nullopt};
}

/// The points of a span that move with a grip.
std::vector<int> moving_points(const Span& span, int pull, bool whole) {
    if (whole) return {span.begin, span.end(), span.begin + span.length / 2};
    if (pull < 0) return {span.begin};
    if (pull > 0) return {span.end()};
    return {};
}

}  // namespace

Box around(std::span<const Box> boxes) {
    Box all = boxes.front();
    for (const Box& box : boxes) {
        const int x = std::min(all.x, box.x), y = std::min(all.y, box.y);
        all = {
            x, y, std::max(all.right(), box.right()) - x, std::max(all.bottom(), box.bottom()) - y};
    }
    return all;
}

Box pulled(const Box& box, const Pull& pull, const Shift& by) {
    const Span h = pulled(across(box), pull.x, by.x);
    const Span v = pulled(down(box), pull.y, by.y);
    return {h.begin, v.begin, h.length, v.length};
}

Box kept_on(const Box& glass, Box box) {
    const Span h = kept(across(glass), across(box));
    const Span v = kept(down(glass), down(box));
    return {h.begin, v.begin, h.length, v.length};
}

std::vector<Box> aligned(std::vector<Box> boxes, Edge edge) {
    if (boxes.empty()) return boxes;
    const Box all = around(boxes);
    for (Box& box : boxes) {
        switch (edge) {
            case Edge::left:
                box.x = all.x;
                break;
            case Edge::middle:
                box.x = all.x + (all.width - box.width) / 2;
                break;
            case Edge::right:
                box.x = all.right() - box.width;
                break;
            case Edge::top:
                box.y = all.y;
                break;
            case Edge::centre:
                box.y = all.y + (all.height - box.height) / 2;
                break;
            case Edge::bottom:
                box.y = all.bottom() - box.height;
                break;
        }
    }
    return boxes;
}

std::vector<Box> distributed(std::vector<Box> boxes, bool is_across) {
    if (boxes.size() < 3) return boxes;
    const auto span = [&](const Box& box) { return is_across ? across(box) : down(box); };
    std::vector<std::size_t> order(boxes.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return span(boxes[a]).begin + span(boxes[a]).end() <
               span(boxes[b]).begin + span(boxes[b]).end();
    });
    int inked = 0;
    for (const Box& box : boxes)
        inked += span(box).length;
    const int begin = span(boxes[order.front()]).begin;
    const int free = span(boxes[order.back()]).end() - begin - inked;
    const int gaps = static_cast<int>(boxes.size()) - 1;
    int behind = begin;
    for (int i = 0; i <= gaps; ++i) {
        Box& box = boxes[order[static_cast<std::size_t>(i)]];
        // All the free pixels so far, rounded down: neighbours differ by one at most.
        const int place = behind + (free * i >= 0 ? free * i / gaps : -((-free * i) / gaps));
        (is_across ? box.x : box.y) = place;
        behind += span(box).length;
    }
    return boxes;
}

int grid_line(double pitch, int number) {
    return static_cast<int>(std::lround(pitch * number));
}

int nearest_grid_line(double pitch, int pixel) {
    return grid_line(pitch, static_cast<int>(std::lround(pixel / pitch)));
}

Lines lines_of(const Box& glass, std::span<const Box> others, const GridPitch& grid) {
    Lines lines{.x = {}, .y = {}, .grid = grid};
    const auto add = [&](const Box& box) {
        lines.x.insert(lines.x.end(), {box.x, box.right(), box.x + box.width / 2});
        lines.y.insert(lines.y.end(), {box.y, box.bottom(), box.y + box.height / 2});
    };
    add(glass);
    for (const Box& box : others)
        add(box);
    return lines;
}

Catch caught(const Box& box, const Pull& pull, const Lines& lines, int reach) {
    const bool whole = pull == Pull{};
    const Reach x =
        nearest(moving_points(across(box), pull.x, whole), lines.x, lines.grid.x, reach);
    const Reach y = nearest(moving_points(down(box), pull.y, whole), lines.y, lines.grid.y, reach);
    return {{x.shift, y.shift}, x.line, y.line};
}

}  // namespace dialplate

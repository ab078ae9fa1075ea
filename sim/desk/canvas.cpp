#include "sim/desk/canvas.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// Part of a pixel that a shape covers, from the signed distance of its centre to the edge (negative
/// inside): exact for a straight edge along the grid, and near enough for a curved one.
double coverage(double distance) {
    return std::clamp(0.5 - distance, 0.0, 1.0);
}

int round_out(double value) {
    return static_cast<int>(std::ceil(value)) + 1;
}

}  // namespace

Colour mix(Colour under, Colour over, double part) {
    const auto channel = [&](int shift) {
        const double a = (under >> shift) & 0xFFu;
        const double b = (over >> shift) & 0xFFu;
        // Never negative: cutting off rounds, at a third of what lround takes.
        return static_cast<Colour>(a + (b - a) * part + 0.5) << shift;
    };
    return channel(16) | channel(8) | channel(0);
}

Area common_part(const Area& a, const Area& b) {
    const int x = std::max(a.x, b.x);
    const int y = std::max(a.y, b.y);
    const int width = std::min(a.right(), b.right()) - x;
    const int height = std::min(a.bottom(), b.bottom()) - y;
    return {x, y, std::max(width, 0), std::max(height, 0)};
}

Area grown(const Area& area, int by) {
    return {area.x - by, area.y - by, area.width + 2 * by, area.height + 2 * by};
}

Canvas::Canvas(int width, int height)
    : width_(width),
      height_(height),
      pixels_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height)) {}

Colour Canvas::at(int x, int y) const {
    if (!all().holds(x, y)) return 0;
    return pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
                   static_cast<std::size_t>(x)];
}

void Canvas::set(int x, int y, Colour colour) {
    if (!all().holds(x, y)) return;
    pixels_[static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
            static_cast<std::size_t>(x)] = colour;
}

void Canvas::blend(int x, int y, Colour colour, double part) {
    if (part <= 0.0 || !all().holds(x, y)) return;
    set(x, y, part >= 1.0 ? colour : mix(at(x, y), colour, part));
}

void Canvas::fill(const Area& area, Colour colour) {
    shade(area, colour, colour);
}

void Canvas::shade(const Area& area, Colour top, Colour bottom) {
    const Area part = common_part(area, all());
    for (int y = part.y; y < part.bottom(); ++y) {
        const double down = (y - area.y + 0.5) / area.height;
        const Colour colour = top == bottom ? top : mix(top, bottom, down);
        const auto row =
            pixels_.begin() + static_cast<std::ptrdiff_t>(y) * static_cast<std::ptrdiff_t>(width_);
        std::fill(row + part.x, row + part.right(), colour);
    }
}

void Canvas::rounded(const Area& area, double radius, Colour top, Colour bottom) {
    const double half_width = area.width / 2.0;
    const double half_height = area.height / 2.0;
    const double r = std::min({radius, half_width, half_height});
    const int corner = static_cast<int>(std::ceil(r));
    const Area part = common_part(area, all());
    for (int y = part.y; y < part.bottom(); ++y) {
        const Colour colour = mix(top, bottom, (y - area.y + 0.5) / area.height);
        const bool straight = y >= area.y + corner && y < area.bottom() - corner;
        const int cut = straight ? 0 : corner;
        fill({area.x + cut, y, area.width - 2 * cut, 1}, colour);
        // How far beyond the corner's centre the row is.
        const double dy =
            std::max(std::abs(y + 0.5 - area.y - half_height) - (half_height - r), 0.0);
        for (int x = 0; x < cut; ++x) {
            const double part_covered = coverage(std::hypot(std::max(r - (x + 0.5), 0.0), dy) - r);
            blend(area.x + x, y, colour, part_covered);
            blend(area.right() - 1 - x, y, colour, part_covered);
        }
    }
}

void Canvas::rounded(const Area& area, double radius, Colour colour) {
    rounded(area, radius, colour, colour);
}

void Canvas::outline(const Area& area, int line, Colour colour) {
    fill({area.x, area.y, area.width, line}, colour);
    fill({area.x, area.bottom() - line, area.width, line}, colour);
    fill({area.x, area.y + line, line, area.height - 2 * line}, colour);
    fill({area.right() - line, area.y + line, line, area.height - 2 * line}, colour);
}

void Canvas::disc(const Circle& circle, Colour colour) {
    const int reach = round_out(circle.radius);
    const int cx = static_cast<int>(circle.x);
    const int cy = static_cast<int>(circle.y);
    for (int y = cy - reach; y <= cy + reach; ++y)
        for (int x = cx - reach; x <= cx + reach; ++x)
            blend(x,
                  y,
                  colour,
                  coverage(std::hypot(x + 0.5 - circle.x, y + 0.5 - circle.y) - circle.radius));
}

void Canvas::ring(const Circle& circle, double line, Colour colour) {
    const int reach = round_out(circle.radius + line);
    const int cx = static_cast<int>(circle.x);
    const int cy = static_cast<int>(circle.y);
    for (int y = cy - reach; y <= cy + reach; ++y)
        for (int x = cx - reach; x <= cx + reach; ++x) {
            const double from_centre = std::hypot(x + 0.5 - circle.x, y + 0.5 - circle.y);
            blend(x, y, colour, coverage(std::abs(from_centre - circle.radius) - line / 2.0));
        }
}

void Canvas::restore(const Canvas& from, const Area& area) {
    const Area part = common_part(area, all());
    for (int y = part.y; y < part.bottom(); ++y) {
        const auto row = static_cast<std::ptrdiff_t>(y) * static_cast<std::ptrdiff_t>(width_);
        std::copy(from.pixels_.begin() + row + part.x,
                  from.pixels_.begin() + row + part.right(),
                  pixels_.begin() + row + part.x);
    }
}

}  // namespace dialplate

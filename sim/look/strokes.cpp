#include "sim/look/strokes.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace dialplate {

std::uint32_t washed(std::uint32_t ground, const Wash& wash) {
    const auto mixed = [&](int shift) {
        const double under = ground >> shift & 0xFF, over = wash.colour >> shift & 0xFF;
        return static_cast<std::uint32_t>(under + (over - under) * wash.cover + 0.5) << shift;
    };
    return mixed(16) | mixed(8) | mixed(0);
}

void fill(Rgb888& picture, const Box& box, const Wash& wash) {
    for (int y = std::max(0, box.y); y < std::min(picture.height, box.bottom()); ++y)
        for (int x = std::max(0, box.x); x < std::min(picture.width, box.right()); ++x)
            picture.at(x, y) = washed(picture.at(x, y), wash);
}

void outline(Rgb888& picture, const Box& box, int line, const Wash& wash) {
    const int rows = std::min(line, box.height), columns = std::min(line, box.width);
    fill(picture, {box.x, box.y, box.width, rows}, wash);
    fill(picture, {box.x, std::max(box.y + rows, box.bottom() - rows), box.width, rows}, wash);
    const int inner = std::max(0, box.height - 2 * rows);
    fill(picture, {box.x, box.y + rows, columns, inner}, wash);
    fill(picture, {box.right() - columns, box.y + rows, columns, inner}, wash);
}

void trace(Rgb888& picture, const Ellipse& ellipse, double line, const Wash& wash, int dashes) {
    const double reach = line + 1.0;
    const int left = static_cast<int>(std::floor(ellipse.x - ellipse.across - reach));
    const int right = static_cast<int>(std::ceil(ellipse.x + ellipse.across + reach));
    const int top = static_cast<int>(std::floor(ellipse.y - ellipse.down - reach));
    const int bottom = static_cast<int>(std::ceil(ellipse.y + ellipse.down + reach));
    for (int y = std::max(0, top); y < std::min(picture.height, bottom); ++y) {
        for (int x = std::max(0, left); x < std::min(picture.width, right); ++x) {
            const double dx = (x + 0.5 - ellipse.x) / ellipse.across;
            const double dy = (y + 0.5 - ellipse.y) / ellipse.down;
            const double r = std::hypot(dx, dy);
            if (r == 0.0) continue;
            // Distance to the line, to first order: what is above 1 over the steepness there.
            const double slope = std::hypot(dx / ellipse.across, dy / ellipse.down) / r;
            const double cover = std::clamp(0.5 + line / 2.0 - std::abs(r - 1.0) / slope, 0.0, 1.0);
            if (cover <= 0.0) continue;
            if (dashes > 0) {
                const double part = (std::atan2(dy, dx) / std::numbers::pi + 1.0) / 2.0 * dashes;
                if (part - std::floor(part) >= 0.5) continue;
            }
            picture.at(x, y) = washed(picture.at(x, y), {wash.colour, wash.cover * cover});
        }
    }
}

}  // namespace dialplate

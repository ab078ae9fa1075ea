#include "sim/look/front_panel.hpp"

#include "sim/check/bezel_geometry.hpp"
#include "sim/look/strokes.hpp"

#include <algorithm>
#include <cstdlib>

namespace dialplate {
namespace {

constexpr std::uint32_t behind_opening = 0xFF4A3A;
constexpr std::uint32_t behind_depth = 0xFFB838;
constexpr std::uint32_t edge_of_opening = 0xF0F4F6;
constexpr std::uint32_t panel = 0x24282C;

bool loses_some(const Box& box, const SeenPixels& seen) {
    return box.x < seen.left || box.y < seen.top || box.right() > seen.right ||
           box.bottom() > seen.bottom;
}

/// Parallel lines at 45 degrees, four pixels of the picture apart and one wide at scale 1.
bool on_hatch(int x, int y, int scale, bool rising) {
    const int period = 4 * std::max(1, scale / 2);
    const int along = rising ? x + y : x - y;
    return (along % period + period) % period < std::max(1, scale / 2);
}

void shade(Rgb888& picture,
           const ScaledGlass& glass,
           const SeenPixels& straight,
           const SeenPixels& tilted) {
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            const int column = x / glass.scale, row = y / glass.scale;
            if (tilted.has(column, row)) continue;
            const bool behind = !straight.has(column, row);
            std::uint32_t& pixel = picture.at(x, y);
            pixel = washed(pixel, {panel, behind ? 0.75 : 0.5});
            if (on_hatch(x, y, glass.scale, behind))
                pixel = washed(pixel, {behind ? behind_opening : behind_depth, 0.8});
        }
    }
}

}  // namespace

Rgb888 behind_panel(const ScaledGlass& glass, const Layout& layout, int page) {
    Rgb888 picture = glass.picture;
    if (!layout.opening) return picture;
    const SeenPixels straight = seen_pixels(layout, *layout.opening);
    const SeenPixels tilted =
        seen_pixels(layout, *layout.opening, shade_of(*layout.opening, layout.viewing));
    shade(picture, glass, straight, tilted);

    const auto enlarged = [&](const Box& box) {
        return Box{box.x * glass.scale,
                   box.y * glass.scale,
                   box.width * glass.scale,
                   box.height * glass.scale};
    };
    const int line = std::max(1, glass.scale / 2);
    // The edge of the opening runs round the pixels that are seen, one line outside them.
    const Box hole = enlarged({.x = straight.left,
                               .y = straight.top,
                               .width = straight.right - straight.left,
                               .height = straight.bottom - straight.top});
    outline(picture,
            {hole.x - line, hole.y - line, hole.width + 2 * line, hole.height + 2 * line},
            line,
            {edge_of_opening});
    for (const Item& item : layout.pages.at(static_cast<std::size_t>(page)).items) {
        if (item.kind == ItemKind::frame && item.frame.line == 0) continue;  // ground
        const bool hidden = loses_some(item.box, straight);
        if (!hidden && !loses_some(item.box, tilted)) continue;
        outline(picture, enlarged(item.box), line, {hidden ? behind_opening : behind_depth});
    }
    return picture;
}

}  // namespace dialplate

#include "sim/look/finger.hpp"

#include "sim/check/tap_odds.hpp"
#include "sim/check/wording.hpp"
#include "sim/look/strokes.hpp"
#include "sim/look/words.hpp"

#include <cmath>
#include <string>
#include <vector>

namespace dialplate {
namespace {

// Radius of the circle about the aim that holds 95 % of a bivariate normal: sqrt(-2 ln 0.05) deviations.
constexpr double deviations_for_95_percent = 2.4477;

constexpr std::uint32_t line_white = 0xFFFFFF;
constexpr std::uint32_t plate = 0x101418;

std::uint32_t tint_of(double hit) {
    if (hit >= 0.99) return 0x40C070;
    if (hit >= 0.95) return 0xE8B040;
    return 0xF05040;
}

/// A share in percent, so that only what is certain reads 100.
std::string percent(double share) {
    const double hundredths = 100.0 * share;
    if (hundredths > 99.9) return "99.9+ %";
    return number(hundredths, 1) + " %";
}

/// Lines of words along the lower edge of a box, each on a plate of its own: there they leave most legends
/// free.
void write_below(Rgb888& picture,
                 const RasterFace& labels,
                 const Box& box,
                 const std::vector<std::string>& lines,
                 int enlarged) {
    constexpr int rim = 1;
    const int line_height = (labels.height + 2 * rim) * enlarged;
    int y = box.bottom() - enlarged - line_height * static_cast<int>(lines.size());
    for (const std::string& line : lines) {
        const int width = words_width(labels, line) * enlarged;
        const int x = box.x + (box.width - width) / 2;
        fill(picture,
             {x - 2 * rim * enlarged, y, width + 4 * rim * enlarged, line_height},
             {plate, 0.85});
        write_words(picture, labels, {x, y + rim * enlarged, line_white, enlarged}, line);
        y += line_height;
    }
}

}  // namespace

Rgb888 with_finger(const ScaledGlass& glass,
                   const Layout& layout,
                   int page,
                   const RasterFace& labels) {
    Rgb888 picture = glass.picture;
    const std::vector<KeyTarget> keys =
        targets_of(layout.pages.at(static_cast<std::size_t>(page)), layout);
    const std::vector<TapOdds> odds = tap_odds(keys, layout.touch.scatter);
    const double scale = glass.scale;
    const double across = scale / layout.pitch_x().value, down = scale / layout.pitch_y().value;
    const int line = std::max(1, glass.scale / 2);
    const auto box_of = [&](const KeyTarget& key) {
        const Box& box = key.item->box;
        return Box{box.x * glass.scale,
                   box.y * glass.scale,
                   box.width * glass.scale,
                   box.height * glass.scale};
    };
    for (std::size_t i = 0; i < keys.size(); ++i) {
        fill(picture, box_of(keys[i]), {tint_of(odds[i].hit), 0.25});
        outline(picture, box_of(keys[i]), line, {tint_of(odds[i].hit)});
    }
    for (std::size_t i = 0; i < keys.size(); ++i) {
        const Box box = box_of(keys[i]);
        const auto about_middle = [&](Millimetres radius) {
            return Ellipse{.x = box.x + box.width / 2.0,
                           .y = box.y + box.height / 2.0,
                           .across = radius.value * across,
                           .down = radius.value * down};
        };
        trace(picture,
              about_middle(layout.touch.scatter * deviations_for_95_percent),
              line,
              {line_white, 0.9});
        trace(picture, about_middle(layout.touch.finger * 0.5), line, {line_white, 0.55}, 24);
    }
    const int enlarged = std::max(1, glass.scale / 2);
    for (std::size_t i = 0; i < keys.size(); ++i) {
        std::vector<std::string> lines{percent(odds[i].hit)};
        if (odds[i].neighbour >= 0.001) lines.push_back("other " + percent(odds[i].neighbour));
        write_below(picture, labels, box_of(keys[i]), lines, enlarged);
    }
    return picture;
}

}  // namespace dialplate

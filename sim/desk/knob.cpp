// The tuning knob: a skirt, a ridged rim that a finger turns, a cap with a dimple for fast spinning.
#include "sim/desk/front.hpp"
#include "sim/desk/tints.hpp"

#include <cmath>
#include <numbers>

namespace dialplate {
namespace {

constexpr int ridges = 48;
// Parts of the radius.
constexpr double skirt = 1.0, rim = 0.955, cap = 0.80, dimple_out = 0.50, dimple_size = 0.17;

/// hypot guards against overflow, which costs three times as much and cannot happen here.
double length(double x, double y) {
    return std::sqrt(x * x + y * y);
}

double covered(double distance) {
    return std::min(std::max(0.5 - distance, 0.0), 1.0);
}

}  // namespace

void draw_knob(Canvas& canvas, const Plan& plan, double turned) {
    if (plan.knob.radius <= 0.0) return;
    const double r = plan.knob.radius;
    const double angle = 2.0 * std::numbers::pi * turned;
    const double dimple_x = plan.knob.x + dimple_out * r * std::sin(angle);
    const double dimple_y = plan.knob.y - dimple_out * r * std::cos(angle);
    const Area area = common_part(plan.knob_area(), canvas.all());
    for (int y = area.y; y < area.bottom(); ++y) {
        for (int x = area.x; x < area.right(); ++x) {
            const double dx = x + 0.5 - plan.knob.x;
            const double dy = y + 0.5 - plan.knob.y;
            const double from_centre = length(dx, dy);
            // A soft shadow below the knob, as from a lamp above the bench.
            const double shadow = length(dx, dy - 0.035 * r) - r;
            // Below the knob itself it is not seen.
            if (from_centre > r - 1.0 && shadow < 0.06 * r)
                canvas.blend(x, y, 0x000000, 0.45 * std::min(1.0 - shadow / (0.06 * r), 1.0));
            if (from_centre > r + 1.0) continue;
            if (from_centre > cap * r - 1.0) {
                canvas.blend(x, y, tint::knob_skirt, covered(from_centre - skirt * r));
                const double around = std::atan2(dx, -dy) - angle;
                const double ridge = 0.5 + 0.5 * std::cos(around * ridges);
                // The rim falls away from the eye: light above, dark below.
                const double lit = 0.62 - 0.38 * dy / r;
                const Colour colour =
                    mix(tint::knob_ridge_dark, tint::knob_ridge_light, ridge * lit);
                canvas.blend(x, y, colour, covered(from_centre - rim * r));
            }
            const double down = 0.5 + 0.5 * dy / (cap * r);
            canvas.blend(x,
                         y,
                         mix(tint::knob_edge, tint::knob_bottom, down),
                         covered(from_centre - cap * r));
            canvas.blend(x,
                         y,
                         mix(tint::knob_top, tint::knob_bottom, down),
                         covered(from_centre - cap * r + 1.5 * plan.letter));
            const double from_dimple = length(x + 0.5 - dimple_x, y + 0.5 - dimple_y);
            if (from_dimple > dimple_size * r + 1.0) continue;
            const double hollow = 0.5 - 0.5 * (y + 0.5 - dimple_y) / (dimple_size * r);
            canvas.blend(x,
                         y,
                         mix(tint::knob_edge, tint::dimple, 0.55 + 0.45 * hollow),
                         covered(from_dimple - dimple_size * r));
            canvas.blend(x,
                         y,
                         mix(tint::knob_bottom, tint::dimple, hollow),
                         covered(from_dimple - dimple_size * r + 1.2 * plan.letter));
        }
    }
}

void draw_knob_caption(Canvas& canvas,
                       const Plan& plan,
                       const Faces& faces,
                       const std::string& step) {
    if (plan.knob.radius <= 0.0) return;
    const Area& area = plan.knob_caption;
    const auto middle = [&](int width) { return area.x + (area.width - width) / 2; };
    faces.small.draw(canvas,
                     middle(faces.small.width("TUNING", 2)),
                     area.y,
                     "TUNING",
                     {.ink = tint::engraved, .spacing = 2});
    const std::string words = faces.small.fitted(step, area.width);
    faces.small.draw(canvas,
                     middle(faces.small.width(words)),
                     area.y + 16 * plan.letter,
                     words,
                     {.ink = tint::quiet});
}

}  // namespace dialplate

#include "sim/desk/front.hpp"

#include "sim/desk/resample.hpp"
#include "sim/desk/tints.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

/// One rule: where its zero is, which way it runs, and the strip it stands in.
struct Ruler {
    Area area;
    bool across = true;
    int zero = 0;    ///< Screen pixel of 0 mm: the glass's left or upper edge.
    int length = 0;  ///< Screen pixels of the glass along the rule.
    double pixels_per_mm = 1;
};

void draw_rule(Canvas& canvas, const Ruler& rule, int unit, const Typeface& face) {
    const int last = static_cast<int>(std::floor(rule.length / rule.pixels_per_mm + 1e-9));
    // Below 4 pixels a millimetre the single ones would run into a grey band.
    const int every = rule.pixels_per_mm >= 4.0 * unit ? 1 : 5;
    const int foot = 4 * unit;  // from the bezel to the ticks
    for (int mm = 0; mm <= last; mm += every) {
        const int at = rule.zero + static_cast<int>(std::lround(mm * rule.pixels_per_mm));
        const int tick = unit * (mm % 10 == 0 ? 8 : mm % 5 == 0 ? 6 : 3);
        const Colour colour = mm % 10 == 0 ? tint::quiet : tint::rule;
        if (rule.across)
            canvas.fill({at, rule.area.bottom() - foot - tick, unit, tick}, colour);
        else
            canvas.fill({rule.area.right() - foot - tick, at, tick, unit}, colour);
        if (mm % 10 != 0) continue;
        const std::string figures = std::to_string(mm);
        const int width = face.width(figures);
        if (rule.across)
            face.draw(canvas,
                      at + unit / 2 - width / 2,
                      rule.area.bottom() - foot - tick - 2 * unit - face.height(),
                      figures,
                      {.ink = tint::quiet});
        else
            face.draw(canvas,
                      rule.area.right() - foot - tick - 3 * unit - width,
                      at - face.ascent() / 2,
                      figures,
                      {.ink = tint::quiet});
    }
}

/// The trim as four slopes that meet in mitres.
void draw_bezel(Canvas& canvas, const Plan& plan) {
    const Area& outer = plan.bezel;
    const Area& inner = plan.opening;
    const Area seen = common_part(outer, canvas.all());
    for (int y = seen.y; y < seen.bottom(); ++y) {
        for (int x = seen.x; x < seen.right(); ++x) {
            if (inner.holds(x, y)) continue;
            // Depth into the trim from each side, 0 at its outer edge, 1 at the opening.
            const double left = (x - outer.x + 0.5) / std::max(inner.x - outer.x, 1);
            const double right =
                (outer.right() - x - 0.5) / std::max(outer.right() - inner.right(), 1);
            const double above = (y - outer.y + 0.5) / std::max(inner.y - outer.y, 1);
            const double below =
                (outer.bottom() - y - 0.5) / std::max(outer.bottom() - inner.bottom(), 1);
            const double least = std::min({left, right, above, below});
            const Colour colour = least == above   ? tint::bezel_above
                                  : least == below ? tint::bezel_below
                                  : least == left  ? tint::bezel_left
                                                   : tint::bezel_right;
            canvas.set(x, y, colour);
        }
    }
    canvas.outline(grown(outer, plan.letter), plan.letter, tint::panel_shadow);
    canvas.fill({outer.x - plan.letter, outer.bottom(), outer.width + 2 * plan.letter, plan.letter},
                tint::panel_light);
    canvas.outline(grown(inner, plan.letter), plan.letter, 0x000000);
}

/// At true size: every pixel of the screen that the part has a share in.
Area draw_resampled_glass(Canvas& canvas,
                          const Plan& plan,
                          const std::vector<std::uint16_t>& pixels,
                          int glass_width,
                          const Box& part) {
    Rgb888 picture(glass_width, static_cast<int>(pixels.size()) / glass_width, 0);
    std::transform(pixels.begin(), pixels.end(), picture.pixels.begin(), expand_rgb565);
    const Area seen =
        common_part(common_part(grown(plan.on_screen(part), 1), plan.glass), plan.opening);
    draw_resampled(canvas, plan.glass, picture, seen);
    return common_part(seen, canvas.all());
}

std::string capitals(std::string words) {
    std::transform(words.begin(), words.end(), words.begin(), [](unsigned char c) {
        return static_cast<char>(c >= 'a' && c <= 'z' ? c - 'a' + 'A' : c);
    });
    return words;
}

}  // namespace

void draw_plate(Canvas& canvas, const Plan& plan) {
    const int unit = plan.letter;
    canvas.fill(canvas.all(), tint::bench);
    canvas.rounded(grown(plan.panel, unit), 7.0 * unit, tint::panel_shadow);
    canvas.rounded({plan.panel.x, plan.panel.y - unit, plan.panel.width, plan.panel.height},
                   6.0 * unit,
                   tint::panel_light);
    canvas.rounded(plan.panel, 6.0 * unit, tint::panel_top, tint::panel_bottom);
}

void draw_panel(Canvas& canvas, const Plan& plan, const Faces& faces, const std::string& title) {
    const int unit = plan.letter;
    draw_plate(canvas, plan);
    if (!plan.title.empty())
        faces.large.draw(canvas,
                         plan.title.x,
                         plan.title.y,
                         capitals(title),
                         {.ink = tint::engraved, .spacing = 2});

    draw_rule(canvas,
              {plan.rule_across, true, plan.glass.x, plan.glass.width, plan.pixels_per_mm_x},
              unit,
              faces.small);
    draw_rule(canvas,
              {plan.rule_down, false, plan.glass.y, plan.glass.height, plan.pixels_per_mm_y},
              unit,
              faces.small);
    const int unit_width = faces.small.width("mm");
    faces.small.draw(canvas,
                     plan.rule_down.right() - 4 * unit - unit_width,
                     plan.rule_across.bottom() - 14 * unit - faces.small.height(),
                     "mm",
                     {.ink = tint::quiet});

    draw_bezel(canvas, plan);
    canvas.fill(plan.opening, tint::module);
}

void draw_caption(Canvas& canvas, const Plan& plan, const Faces& faces, const CaptionWords& words) {
    const int unit = plan.letter;
    const int line = plan.caption.y + 13 * unit;
    const int page_width = faces.small.width(words.page, 1);
    faces.small.draw(canvas,
                     plan.caption.right() - page_width,
                     line,
                     words.page,
                     {.ink = tint::engraved, .spacing = 1});
    faces.small.draw(canvas,
                     plan.caption.x,
                     line,
                     faces.small.fitted(words.module, plan.caption.width - page_width - 20 * unit),
                     {.ink = tint::quiet});
}

Area draw_glass(Canvas& canvas,
                const Plan& plan,
                const std::vector<std::uint16_t>& pixels,
                int glass_width,
                const Box& part) {
    if (plan.zoom == 0) return draw_resampled_glass(canvas, plan, pixels, glass_width, part);
    const int zoom = plan.zoom;
    const Area wanted = plan.on_screen(part);
    const Area seen = common_part(common_part(wanted, plan.opening), canvas.all());
    for (int y = seen.y; y < seen.bottom(); ++y) {
        const std::size_t row = static_cast<std::size_t>((y - plan.glass.y) / zoom) *
                                static_cast<std::size_t>(glass_width);
        std::uint32_t* out = canvas.pixels() +
                             static_cast<std::size_t>(y) * static_cast<std::size_t>(canvas.width());
        int x = seen.x;
        while (x < seen.right()) {
            const int column = (x - plan.glass.x) / zoom;
            const int end = std::min(plan.glass.x + (column + 1) * zoom, seen.right());
            std::fill(
                out + x, out + end, expand_rgb565(pixels[row + static_cast<std::size_t>(column)]));
            x = end;
        }
    }
    return seen;
}

}  // namespace dialplate

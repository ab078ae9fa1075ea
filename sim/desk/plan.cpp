#include "sim/desk/plan.hpp"

#include <algorithm>
#include <cmath>

namespace dialplate {
namespace {

constexpr int greatest_zoom = 16;
// Distances of the window's own, in unenlarged pixels.
constexpr int around_panel = 14;
constexpr int rule_depth = 26;
constexpr int caption_height = 28;
constexpr int strip_height = 58;
constexpr int beside_knob = 44;
constexpr int knob_caption_height = 48;
// A tuning knob that a hand likes is 30..50 mm across; the window gives it what it can spare.
constexpr double knob_mm = 40.0;
constexpr int knob_least = 96, knob_most = 300;
/// Beyond four times, a first window would be all glass.
constexpr int wanted_zoom = 4;
/// Narrower, the status strip cannot be read.
constexpr WindowSize least_window{860, 480};
/// Height of the bar that a desktop puts above a window.
constexpr int title_bar = 30;
/// Fifty columns of the face for running words, fewer where the bench would get less than a small glass takes.
constexpr int side_width = 400, side_least = 340;
constexpr int bench_least = 444;
/// Of the drawer that the side is in a narrower window.
constexpr int handle_width = 18, handle_height = 84;
/// Trim drawn where the layout states no opening.
constexpr double usual_overlap_mm = 2.0;

/// What the panel keeps free around its parts; a small window gives some of it up.
struct Air {
    int inside, title;
};
constexpr Air roomy{34, 34};
constexpr Air snug{18, 34};
constexpr Air tight{10, 0};
/// A knob of this part of its size will do where room is short.
constexpr double small_knob = 0.7;

int round(double value) {
    return static_cast<int>(std::lround(value));
}

int letter_size(WindowSize window) {
    return window.width >= 3000 && window.height >= 1700 ? 2 : 1;
}

/// Columns of the side.
int side_share(WindowSize window, bool open) {
    const int letter = letter_size(window);
    const int spare = window.width / letter - bench_least;
    return open && spare >= side_least ? std::min(spare, side_width) * letter : 0;
}

/// The opening on the glass, in mm; all of it where the layout says nothing.
Opening opening_of(const Layout& layout) {
    if (layout.opening) return *layout.opening;
    Opening whole;
    whole.width = layout.pitch_x() * layout.glass_width();
    whole.height = layout.pitch_y() * layout.glass_height();
    whole.overlap = Millimetres{usual_overlap_mm};
    return whole;
}

/// Glass, opening, bezel and rules with the glass at (0, 0).
struct Block {
    Area glass, opening, bezel, all;
};

/// Screen pixels a millimetre, across and down; a whole zoom has two where pixels are not square.
struct Scale {
    double across = 1.0, down = 1.0;
};

Scale scale_of(const Layout& layout, const Zoom& zoom) {
    if (zoom.pixels_per_mm > 0.0) return {zoom.pixels_per_mm, zoom.pixels_per_mm};
    return {zoom.times / layout.pitch_x().value, zoom.times / layout.pitch_y().value};
}

Block block_at(const Layout& layout, const Zoom& zoom, int letter) {
    const auto [across, down] = scale_of(layout, zoom);
    const Opening hole = opening_of(layout);
    Block block;
    block.glass = {0,
                   0,
                   round(layout.glass_width() * layout.pitch_x().value * across),
                   round(layout.glass_height() * layout.pitch_y().value * down)};
    const int left = round(hole.left.value * across);
    const int top = round(hole.top.value * down);
    block.opening = {left,
                     top,
                     round((hole.left + hole.width).value * across) - left,
                     round((hole.top + hole.height).value * down) - top};
    const int trim_x = std::max(round(hole.overlap.value * across), 6);
    const int trim_y = std::max(round(hole.overlap.value * down), 6);
    block.bezel = {block.opening.x - trim_x,
                   block.opening.y - trim_y,
                   block.opening.width + 2 * trim_x,
                   block.opening.height + 2 * trim_y};
    block.all = {block.bezel.x - rule_depth * letter,
                 block.bezel.y - rule_depth * letter,
                 block.bezel.width + 2 * rule_depth * letter,
                 block.bezel.height + (rule_depth + caption_height) * letter};
    return block;
}

/// Diameter of the knob for a panel of that scale.
int knob_size(const Layout& layout, const Zoom& zoom, int letter) {
    return std::clamp(
        round(knob_mm * scale_of(layout, zoom).across), knob_least * letter, knob_most * letter);
}

struct Need {
    int width = 0, height = 0;
};

/// Window that holds panel, knob and strip without a pixel to spare.
Need needed(const Layout& layout, const Zoom& zoom, int letter, const Air& air, int knob) {
    const Block block = block_at(layout, zoom, letter);
    const int frame = 2 * (around_panel + air.inside) * letter;
    return {block.all.width + knob + beside_knob * letter + frame,
            std::max(block.all.height, knob + knob_caption_height * letter) + frame +
                (air.title + strip_height) * letter};
}

/// @param window  Without the side.
bool fits(const Layout& layout, WindowSize window, const Zoom& zoom, const Air& air, int letter) {
    const int knob = round(small_knob * knob_size(layout, zoom, letter));
    const Need need = needed(layout, zoom, letter, air, knob);
    return need.width <= window.width && need.height <= window.height;
}

/// The greatest zoom for a window. A small window rather goes without its title than without a
/// picture that is twice as large.
int fitting_zoom(const Layout& layout, WindowSize window, int most, int letter) {
    int zoom = most;
    while (zoom > 1 && !fits(layout, window, zoom, snug, letter))
        --zoom;
    return zoom == 1 && most > 1 && fits(layout, window, 2, tight, letter) ? 2 : zoom;
}

Area moved(Area area, int dx, int dy) {
    return {area.x + dx, area.y + dy, area.width, area.height};
}

}  // namespace

std::optional<GlassPixel> Plan::glass_at(int x, int y) const {
    if (!opening.holds(x, y) || !glass.holds(x, y)) return std::nullopt;
    // A pixel of the screen belongs to what its middle is on.
    return GlassPixel{static_cast<int>((x - glass.x + 0.5) / scale_x),
                      static_cast<int>((y - glass.y + 0.5) / scale_y)};
}

Area Plan::on_screen(const Box& box) const {
    // The first pixel of the screen whose middle is beyond an edge, so that glass_at agrees.
    const auto edge = [](int at, double scale) {
        return static_cast<int>(std::ceil(at * scale - 0.5));
    };
    const int left = edge(box.x, scale_x), top = edge(box.y, scale_y);
    return {glass.x + left,
            glass.y + top,
            edge(box.right(), scale_x) - left,
            edge(box.bottom(), scale_y) - top};
}

Area Plan::knob_area() const {
    const int reach = static_cast<int>(std::ceil(knob.radius)) + 10 * letter;
    return {round(knob.x) - reach, round(knob.y) - reach, 2 * reach, 2 * reach};
}

bool Plan::on_knob(int x, int y) const {
    return knob.radius > 0.0 && std::hypot(x + 0.5 - knob.x, y + 0.5 - knob.y) <= knob.radius;
}

Plan plan_empty_window(WindowSize window, SideWish wish) {
    Plan plan;
    plan.window = window;
    plan.letter = letter_size(window);
    const int side = side_share(window, wish.open);
    if (side_share(window, true) == 0) {
        const int beside = handle_width * plan.letter, high = handle_height * plan.letter;
        const int width =
            wish.drawer ? std::min(side_width * plan.letter, window.width - 2 * beside) : 0;
        plan.drawer = wish.drawer;
        if (wish.drawer) plan.side = {window.width - width, 0, width, window.height};
        plan.handle = {
            window.width - width - beside, std::max((window.height - high) / 2, 0), beside, high};
    }
    window.width -= side;
    if (side > 0) plan.side = {window.width, 0, side, window.height};
    const int edge = around_panel * plan.letter;
    const int strip = strip_height * plan.letter;
    plan.strip = {0, window.height - strip, window.width, strip};
    plan.panel = {edge, edge, window.width - 2 * edge, plan.strip.y - 2 * edge};
    return plan;
}

Plan plan_window(const Layout& layout, WindowSize window, Zoom zoom, SideWish side) {
    Plan plan = plan_empty_window(window, side);
    if (!plan.drawer) window.width -= plan.side.width;
    const int letter = plan.letter;
    if (zoom.pixels_per_mm <= 0.0)
        zoom.times = zoom.times == 0 ? fitting_zoom(layout, window, greatest_zoom, letter)
                                     : std::clamp(zoom.times, 1, greatest_zoom);
    plan.zoom = zoom.pixels_per_mm > 0.0 ? 0 : zoom.times;
    const int unit = plan.letter;
    const auto [across, down] = scale_of(layout, zoom);
    plan.pixels_per_mm_x = across;
    plan.pixels_per_mm_y = down;

    const Air air = fits(layout, window, zoom, roomy, letter)  ? roomy
                    : fits(layout, window, zoom, snug, letter) ? snug
                                                               : tight;
    const Area room = grown({plan.panel.x,
                             plan.panel.y + air.title * unit,
                             plan.panel.width,
                             plan.panel.height - air.title * unit},
                            -air.inside * unit);

    const Block block = block_at(layout, zoom, unit);
    const int gap = beside_knob * unit;
    const int knob = std::min({knob_size(layout, zoom, unit),
                               room.width - block.all.width - gap,
                               room.height - knob_caption_height * unit});
    const bool knob_fits = knob >= knob_least * unit;
    const int used = block.all.width + (knob_fits ? gap + knob : 0);
    // Everything in the middle of the panel; what does not fit hangs over to the right and below.
    const int dx = room.x + std::max((room.width - used) / 2, 0) - block.all.x;
    const int dy = room.y + std::max((room.height - block.all.height) / 2, 0) - block.all.y;
    plan.glass = moved(block.glass, dx, dy);
    plan.scale_x = static_cast<double>(plan.glass.width) / layout.glass_width();
    plan.scale_y = static_cast<double>(plan.glass.height) / layout.glass_height();
    plan.opening = moved(block.opening, dx, dy);
    plan.bezel = moved(block.bezel, dx, dy);
    const int depth = rule_depth * unit;
    plan.rule_across = {plan.bezel.x, plan.bezel.y - depth, plan.bezel.width, depth};
    plan.rule_down = {plan.bezel.x - depth, plan.bezel.y, depth, plan.bezel.height};
    if (air.title > 0)
        plan.title = {plan.bezel.x, plan.panel.y + 22 * unit, plan.bezel.width, 14 * unit};
    plan.caption = {plan.bezel.x, plan.bezel.bottom(), plan.bezel.width, caption_height * unit};
    if (knob_fits) {
        const double radius = knob / 2.0;
        // The caption belongs to the knob: together they stand at the middle of the bezel.
        const double middle = plan.bezel.y + plan.bezel.height / 2.0;
        const double lowest = room.bottom() - radius - knob_caption_height * unit;
        plan.knob = {static_cast<double>(plan.bezel.right() + depth + gap) + radius,
                     std::min(std::floor(middle), lowest),
                     radius};
        plan.knob_caption = {round(plan.knob.x - radius),
                             round(plan.knob.y + radius) + 14 * unit,
                             knob,
                             knob_caption_height * unit};
    }
    return plan;
}

WindowSize wanted_window(const Layout& layout, WindowSize room, int zoom, bool side_open) {
    const int letter = letter_size({room.width * 9 / 10, room.height * 9 / 10});
    const int side = side_share(room, side_open);
    // Nine tenths of the screen; a small screen as a whole, but for the title bar that goes with it.
    const WindowSize most{room.width * 9 / 10 - side, room.height * 9 / 10};
    const WindowSize whole{room.width - side, room.height - title_bar};
    int chosen = zoom;
    if (zoom == 0) {
        chosen = fitting_zoom(layout, most, wanted_zoom, letter);
        if (chosen == 1) chosen = fitting_zoom(layout, whole, 2, letter);
    }
    const Need need = needed(layout, chosen, letter, roomy, knob_size(layout, chosen, letter));
    const bool large = need.width > most.width || need.height > most.height;
    const WindowSize limit = large ? whole : most;
    return {std::min(std::max(need.width, least_window.width - side), limit.width) + side,
            std::min(std::max(need.height, least_window.height), limit.height)};
}

}  // namespace dialplate

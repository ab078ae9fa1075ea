// Where everything in the window is: a function of the layout's measures and of the window's size.
#pragma once

#include "sim/desk/canvas.hpp"
#include "sim/layout/layout.hpp"

#include <optional>

namespace dialplate {

/// Width and height in screen pixels.
struct WindowSize {
    int width = 0, height = 0;
    friend constexpr bool operator==(const WindowSize&, const WindowSize&) = default;
};

/// Pixel of the glass, as Prototype::touch takes it.
struct GlassPixel {
    int x = 0, y = 0;
    friend constexpr bool operator==(const GlassPixel&, const GlassPixel&) = default;
};

/// How large the glass is shown.
struct Zoom {
    int times =
        0;  ///< Screen pixels a glass pixel, 1..16; 0: the greatest at which panel and knob fit.
    double pixels_per_mm = 0.0;  ///< Above 0: true size on such a screen, whatever `times` says.
    constexpr Zoom(int t = 0) : times(t) {}
    [[nodiscard]] static constexpr Zoom true_size(double pixels_per_mm) {
        Zoom zoom;
        zoom.pixels_per_mm = pixels_per_mm;
        return zoom;
    }
};

/// The window, in screen pixels. The panel is to scale, and the millimetres of opening and bezel follow from
/// the glass's pitch.
struct Plan {
    WindowSize window;
    int zoom = 1;  ///< Screen pixels a glass pixel, 1..16; 0: true size, by any factor.
    double scale_x = 1.0, scale_y = 1.0;  ///< Screen pixels a glass pixel, across and down.
    int letter = 1;                       ///< Screen pixels a pixel of the window's own words.
    Area panel;                           ///< The front panel.
    Area glass;                           ///< The whole active area, also what the bezel hides.
    Area opening;                         ///< The hole in the panel.
    Area bezel;                           ///< The trim around the opening, opening included.
    Area rule_across;                     ///< Millimetre rule above the bezel.
    Area rule_down;                       ///< Millimetre rule left of it.
    Area title;                           ///< Engraved line above; empty where there is no room.
    Area caption;                         ///< Below the bezel: module and page.
    Circle knob;                          ///< Radius 0: no room for one; the wheel still turns it.
    Area knob_caption;
    Area strip;  ///< Status, along the lower edge.
    Area side;   ///< Ledger, findings and the like, along the right edge; empty while closed.
    bool drawer = false;  ///< The side lies over the bench, since there is no room beside it.
    Area handle;  ///< Where the drawer is drawn out and pushed in; empty where there is room.
    double pixels_per_mm_x = 1.0, pixels_per_mm_y = 1.0;

    /// A box of the glass on the screen; at true size to the nearest pixel.
    [[nodiscard]] Area on_screen(const Box& box) const;
    /// The glass pixel under a place of the window; nothing where the panel is in the way.
    [[nodiscard]] std::optional<GlassPixel> glass_at(int x, int y) const;
    /// Everything that the knob draws on.
    [[nodiscard]] Area knob_area() const;
    [[nodiscard]] bool on_knob(int x, int y) const;

    friend bool operator==(const Plan&, const Plan&) = default;
};

/// What of the side is wished for.
struct SideWish {
    bool open = false;    ///< Beside the bench, where the window is wide enough for both.
    bool drawer = false;  ///< Over the bench, where it is not.
    constexpr SideWish(bool beside = false, bool over = false) : open(beside), drawer(over) {}
};

Plan plan_window(const Layout& layout, WindowSize window, Zoom zoom, SideWish side = {});

/// A window without a layout: panel and strip alone.
Plan plan_empty_window(WindowSize window, SideWish side = {});

/// The window in which a layout looks best on a screen of that much free room: the greatest zoom whose
/// window leaves a margin, no more than 4.
WindowSize wanted_window(const Layout& layout, WindowSize room, int zoom, bool side_open = false);

}  // namespace dialplate

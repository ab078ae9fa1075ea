// Which colours meet on a page: the texts of an item with their faces, and what lies behind it.
#pragma once

#include "sim/layout/layout.hpp"

#include <string>
#include <vector>

namespace dialplate {

/// Words or digits of an item as they stand on the glass.
struct ShownText {
    const char* part = "";  ///< "its number", "its text when pressed", ...
    FaceId face = 0;
    PaintId ink = 0;
    PaintId ground = 0;
};

/// The texts of an item that somebody must read, in every state that it can take. Left out are keys
/// that are disabled (inactive parts are exempt from WCAG 2.2 SC 1.4.3) and lamps that are not lit.
std::vector<ShownText> texts_of(const Item& item, const Layout& layout);

/// Something of an item that says something without words: a bar, ticks, a pointer, a shape.
struct ShownMark {
    const char* part = "";  ///< "its bar", ...
    PaintId ink = 0;
    PaintId ground = 0;
};
std::vector<ShownMark> marks_of(const Item& item);

/// What an item lies on: the fill of the last filled frame around it, or the ground of the page.
PaintId backdrop_of(const Item& item, const Page& page);

/// Whether `inner` lies wholly inside the line of a frame.
bool inside_line(const Box& inner, const Item& frame);

/// A paint as a palette holds it; palette 0 is the paints as typed.
std::uint16_t colour_in(const Layout& layout, PaintId paint, std::size_t palette);

/// Contrast of two paints in the palette in which it is least.
struct LeastContrast {
    double ratio = 21.0;
    std::size_t palette = 0;
};
LeastContrast least_contrast(const Layout& layout, PaintId a, PaintId b);

/// ` in palette "dim"`, or nothing where the layout has one palette only.
std::string in_palette(const Layout& layout, std::size_t palette);

/// `#9FE0A0`
std::string hex_colour(std::uint32_t rgb888);

/// A paint with its colour as the glass shows it: `amber (#FFBA4A)`.
std::string painted(const Layout& layout, PaintId paint, std::size_t palette);

}  // namespace dialplate

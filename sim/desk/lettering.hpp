// The window's own faces and colours for Dear ImGui, so that the side is cut from the same plate as the panel.
#pragma once

#include "sim/desk/front.hpp"

#include <string>

struct ImFont;

namespace dialplate {

/// The faces as Dear ImGui holds them.
struct Lettering {
    ImFont* small = nullptr;   ///< 9 rows: units, captions.
    ImFont* words = nullptr;   ///< 13 rows: running words.
    ImFont* strong = nullptr;  ///< 14 rows, bold: titles and the figures that count.
};

/// Puts the faces into the atlas of the present context, enlarged, and builds it.
Lettering letter(const Faces& faces);

/// The side's colours, edges and distances.
/// @param unit  Screen pixels a pixel of the window's own words.
void dress(int unit);

/// A colour of the window as Dear ImGui takes it.
[[nodiscard]] unsigned ink(Colour colour, double part = 1.0);

}  // namespace dialplate

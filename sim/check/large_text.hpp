// Which text counts as large, and may do with less contrast.
#pragma once

#include "sim/layout/layout.hpp"

namespace dialplate {

/// Whether a face's em is 18 pt or more, or 14 pt if it is bold, on this display.
/// Source: WCAG 2.2, "large scale" (CON-06).
bool is_large_text(const Layout& layout, FaceId face);

}  // namespace dialplate

// Colours as somebody sees them who lacks one kind of cone.
#pragma once

#include "sim/colour/linear_light.hpp"

#include <array>

namespace dialplate {

/// The cone that is missing: long waves (protan), middle waves (deutan), short waves (tritan).
enum class Vision { protan, deutan, tritan };

constexpr std::array<Vision, 3> all_visions{Vision::protan, Vision::deutan, Vision::tritan};

/// "protan", "deutan", "tritan".
[[nodiscard]] const char* name_of(Vision vision);

/// Rows: red, green, blue of what is seen; columns: of what is shown. On linear light.
using VisionMatrix = std::array<std::array<double, 3>, 3>;

/// Source: Machado, Oliveira, Fernandes, IEEE TVCG 15(6), 1291-1298, 2009, severity 1.0 (read,
/// second-hand). The model is held to be weak for tritan: that one is an indication only.
[[nodiscard]] const VisionMatrix& matrix_of(Vision vision);

/// A colour as such an eye sees it, clamped to what can be shown.
[[nodiscard]] LinearRgb seen_with(Vision vision, const LinearRgb& light);

}  // namespace dialplate

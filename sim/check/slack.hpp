// What comparisons allow for rounding in the arithmetic.
#pragma once

namespace dialplate {

/// In the unit of what is compared, or as a part of it.
inline constexpr double slack = 1e-9;

}  // namespace dialplate

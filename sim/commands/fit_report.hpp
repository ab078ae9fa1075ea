// What a fitting found, for people and for scripts.
#pragma once

#include "sim/fit/fit.hpp"

#include <string>

namespace dialplate {

std::string fit_text(const Layout& layout, const Fit& fitted, const FitWish& wish);
std::string fit_json(const Layout& layout, const Fit& fitted, const FitWish& wish);

}  // namespace dialplate

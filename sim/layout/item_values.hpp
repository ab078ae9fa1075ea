// The values that an item shows.
#pragma once

#include "sim/layout/layout.hpp"

#include <vector>

namespace dialplate {

/// The values on which it depends how an item looks, in order of its members; twice if it names one twice.
std::vector<ValueId> values_of(const Item& item);

}  // namespace dialplate

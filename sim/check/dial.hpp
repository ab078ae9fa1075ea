// The dial of a layout: which value is the frequency, and how many hertz its unit has.
#pragma once

#include "sim/layout/layout.hpp"

#include <algorithm>
#include <cstdint>
#include <optional>
#include <string_view>

namespace dialplate {

/// The value that plays a role; null if none does.
[[nodiscard]] inline const Value* value_with(const Layout& layout, Role role) {
    const auto found = std::find_if(layout.values.begin(),
                                    layout.values.end(),
                                    [&](const Value& value) { return value.role == role; });
    return found == layout.values.end() ? nullptr : &*found;
}

/// Hertz in a unit of frequency; none for any other unit. No unit at all stands for hertz.
[[nodiscard]] inline std::optional<std::int64_t> hertz_in(std::string_view unit) {
    if (unit.empty() || unit == "Hz") return 1;
    if (unit == "kHz") return 1000;
    if (unit == "MHz") return 1000000;
    return std::nullopt;
}

/// Hertz in one step of the frequency; none without a frequency, or in a unit that is not one of hertz.
[[nodiscard]] inline std::optional<std::int64_t> hertz_a_unit(const Layout& layout) {
    const Value* const frequency = value_with(layout, Role::frequency);
    return frequency == nullptr ? std::nullopt : hertz_in(frequency->unit);
}

}  // namespace dialplate

// A value set by its name, as people write it: a choice by its text, a flag by true or false, a number
// or level by a whole number in its range.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace dialplate {

/// What was meant, or why that is not known.
template <class T>
struct Meant {
    std::optional<T> it;
    std::string why;  ///< One sentence without a full stop when `it` is empty.
};

/// The value, page or palette of that name, with a suggestion for a misspelt one.
Meant<ValueId> value_named(const Layout& layout, std::string_view name);
Meant<int> page_named(const Layout& layout, std::string_view name);
Meant<int> palette_named(const Layout& layout, std::string_view name);
/// Page and item of that name; the first, if several items have it.
struct ItemPlace {
    int page = 0, item = 0;
};
Meant<ItemPlace> item_named(const Layout& layout, std::string_view name);

/// What `written` sets the value to.
Meant<std::int32_t> setting(const Value& value, std::string_view written);

struct Assignment {
    ValueId value = 0;
    std::int32_t to = 0;
};

/// Reads `name=value`; what is right of the first "=" is the value.
Meant<Assignment> assignment(const Layout& layout, std::string_view written);

}  // namespace dialplate

#include "sim/prototype/assignment.hpp"

#include "sim/layout/mistakes.hpp"
#include "sim/layout/suggestion.hpp"

#include <charconv>
#include <vector>

namespace dialplate {
namespace {

constexpr std::size_t most_listed = 8;

/// `there is no page "mian": did you mean "main"?`, or what there is.
std::string unknown(std::string_view kind,
                    std::string_view name,
                    const std::vector<std::string_view>& known) {
    std::string why = "there is no " + std::string{kind} + " " + quote(name);
    const std::string_view near = nearest(name, known);
    if (!near.empty()) {
        return why + ", did you mean " + quote(near) + "?";
    }
    if (known.empty()) {
        return why + ", the layout has none";
    }
    why += "; there is ";
    for (std::size_t i = 0; i < known.size() && i < most_listed; ++i) {
        why += (i == 0 ? "" : ", ") + quote(known[i]);
    }
    return known.size() > most_listed ? why + ", ..." : why;
}

template <class Things, class NameOf>
Meant<int> index_named(const Things& things,
                       NameOf name_of,
                       std::string_view kind,
                       std::string_view name) {
    std::vector<std::string_view> known;
    for (std::size_t i = 0; i < things.size(); ++i) {
        known.push_back(name_of(things[i]));
        if (known.back() == name) {
            return {static_cast<int>(i), {}};
        }
    }
    return {std::nullopt, unknown(kind, name, known)};
}

Meant<std::int32_t> number_setting(const Value& value, std::string_view written) {
    std::int64_t number = 0;
    const char* end = written.data() + written.size();
    const auto [stopped, trouble] = std::from_chars(written.data(), end, number);
    const std::string range = std::to_string(value.min) + " to " + std::to_string(value.max) +
                              (value.unit.empty() ? "" : " " + value.unit);
    if (trouble == std::errc::invalid_argument || stopped != end) {
        return {
            std::nullopt,
            quote(value.name) + " takes a whole number, " + range + ", found " + quote(written)};
    }
    if (trouble != std::errc{} || number < value.min || number > value.max) {
        return {std::nullopt,
                quote(value.name) + " goes from " + range + ", found " + std::string{written}};
    }
    return {static_cast<std::int32_t>(number), {}};
}

}  // namespace

Meant<ValueId> value_named(const Layout& layout, std::string_view name) {
    return index_named(
        layout.values, [](const Value& v) { return std::string_view{v.name}; }, "value", name);
}

Meant<int> page_named(const Layout& layout, std::string_view name) {
    return index_named(
        layout.pages, [](const Page& p) { return std::string_view{p.name}; }, "page", name);
}

Meant<int> palette_named(const Layout& layout, std::string_view name) {
    return index_named(
        layout.palettes, [](const std::string& p) { return std::string_view{p}; }, "palette", name);
}

Meant<ItemPlace> item_named(const Layout& layout, std::string_view name) {
    std::vector<std::string_view> known;
    for (std::size_t page = 0; page < layout.pages.size(); ++page) {
        const std::vector<Item>& items = layout.pages[page].items;
        for (std::size_t item = 0; item < items.size(); ++item) {
            known.emplace_back(items[item].name);
            if (items[item].name == name) {
                return {ItemPlace{static_cast<int>(page), static_cast<int>(item)}, {}};
            }
        }
    }
    return {std::nullopt, unknown("item", name, known)};
}

Meant<std::int32_t> setting(const Value& value, std::string_view written) {
    switch (value.type) {
        case ValueType::choice: {
            Meant<int> choice = index_named(
                value.choices,
                [](const Choice& c) { return std::string_view{c.text}; },
                "choice of " + quote(value.name),
                written);
            return {choice.it, choice.why};
        }
        case ValueType::flag:
            if (written == "true" || written == "false") {
                return {written == "true" ? 1 : 0, {}};
            }
            return {std::nullopt,
                    quote(value.name) + " takes true or false, found " + quote(written)};
        case ValueType::number:
        case ValueType::level:
            break;
    }
    return number_setting(value, written);
}

Meant<Assignment> assignment(const Layout& layout, std::string_view written) {
    const std::size_t sign = written.find('=');
    if (sign == std::string_view::npos) {
        return {std::nullopt, "a value is set by name=value, found " + quote(written)};
    }
    const Meant<ValueId> value = value_named(layout, written.substr(0, sign));
    if (!value.it) {
        return {std::nullopt, value.why};
    }
    const Meant<std::int32_t> to =
        setting(layout.values[static_cast<std::size_t>(*value.it)], written.substr(sign + 1));
    if (!to.it) {
        return {std::nullopt, to.why};
    }
    return {Assignment{.value = *value.it, .to = *to.it}, {}};
}

}  // namespace dialplate

#include "sim/emit/layout_names.hpp"

#include "sim/emit/identifiers.hpp"

#include <algorithm>

namespace dialplate {
namespace {

// Arduino's tools take sketch names of up to 63 characters (Arduino sketch specification; from memory).
constexpr std::size_t longest_sketch_name = 63;

std::vector<const Item*> key_items(const Layout& layout, const BuiltImage& built) {
    std::vector<const Item*> keys;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            // A key off the glass has no number; the others follow each other.
            if (item.kind == ItemKind::key && keys.size() < built.keys.size() &&
                built.keys[keys.size()] == item.name) {
                keys.push_back(&item);
            }
        }
    }
    return keys;
}

/// Whether a key has the name that the reader gives to a nameless one: "key-3".
bool is_nameless(const Item& item) {
    constexpr std::string_view start = "key-";
    return item.name.starts_with(start) &&
           item.name.find_first_not_of("0123456789'", start.size()) == std::string::npos;
}

}  // namespace

std::vector<const Key*> keys_by_number(const Layout& layout, const BuiltImage& built) {
    std::vector<const Key*> keys;
    for (const Item* item : key_items(layout, built)) {
        keys.push_back(&item->key);
    }
    return keys;
}

LayoutNames layout_names(const Layout& layout, const BuiltImage& built) {
    LayoutNames names;
    Identifiers values, choices, keys, pages, palettes, sketch;
    for (const Value& value : layout.values) {
        const std::string words = words_of(value.name);
        names.values.push_back(values.add(words, "value"));
        std::vector<std::string>& its = names.choices.emplace_back();
        for (const Choice& choice : value.choices) {
            const std::string text = words_of(choice.text);
            its.push_back(choices.add((words.empty() ? "value" : words) + '_' +
                                          (text.empty() ? std::to_string(its.size()) : text),
                                      "value"));
        }
    }
    for (const Item* item : key_items(layout, built)) {
        const std::string text = is_nameless(*item) ? words_of(item->key.text) : std::string{};
        names.keys.push_back(keys.add(text.empty() ? words_of(item->name) : text, "key"));
    }
    for (const Page& page : layout.pages) {
        names.pages.push_back(pages.add(words_of(page.name), "page"));
    }
    for (const std::string& palette : layout.palettes) {
        names.palettes.push_back(palettes.add(words_of(palette), "palette"));
    }
    names.sketch = sketch.add(words_of(layout.title).substr(0, longest_sketch_name - 8), "display");
    return names;
}

}  // namespace dialplate

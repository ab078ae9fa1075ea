#include "sim/edit/item_changes.hpp"

#include "sim/edit/json_words.hpp"
#include "sim/edit/naming.hpp"
#include "sim/edit/pointers.hpp"
#include "sim/edit/waivers.hpp"
#include "sim/layout/colour.hpp"
#include "sim/layout/mistakes.hpp"

#include <algorithm>
#include <charconv>
#include <cstdlib>
#include <functional>
#include <iterator>
#include <set>

namespace dialplate {
namespace {

/// Every name that an item has, written or made up.
std::set<std::string> item_names(const Layout& layout) {
    std::set<std::string> names;
    for (const Page& page : layout.pages)
        for (const Item& item : page.items)
            names.insert(item.name);
    return names;
}

/// A name like that one that is free, and taken from now on.
std::string free_name(std::string name, std::set<std::string>& taken) {
    std::string free = next_free(std::move(name),
                                 [&](const std::string& tried) { return taken.count(tried) != 0; });
    taken.insert(free);
    return free;
}

/// Pointers from the last in the document to the first, so that removing one leaves the others' right.
std::vector<std::string> last_first(const Layout& layout, std::span<const std::string> pointers) {
    std::vector<std::string> order;
    for (const std::string& pointer : pointers)
        if (item_at(layout, pointer)) order.push_back(pointer);
    std::sort(order.begin(), order.end(), [&](const std::string& a, const std::string& b) {
        const ItemIndex pa = *item_at(layout, a), pb = *item_at(layout, b);
        return pa.page != pb.page ? pa.page > pb.page : pa.item > pb.item;
    });
    return order;
}

void set_number(std::vector<Change>& changes, const std::string& pointer, int was, int is) {
    if (was != is) changes.push_back({Change::Kind::replace, pointer, std::to_string(is)});
}

/// The paint that stands out most from a ground.
std::string paint_on(const Layout& layout, PaintId ground) {
    const auto brightness = [&](const Paint& paint) {
        const std::uint32_t rgb = expand_rgb565(paint.rgb565);
        return static_cast<int>(3 * ((rgb >> 16) & 255u) + 6 * ((rgb >> 8) & 255u) + (rgb & 255u));
    };
    const int under = brightness(layout.paints[static_cast<std::size_t>(ground)]);
    const auto farthest =
        std::max_element(layout.paints.begin(), layout.paints.end(), [&](auto& a, auto& b) {
            return std::abs(brightness(a) - under) < std::abs(brightness(b) - under);
        });
    return farthest->name;
}

using Fits = std::function<bool(const Value&)>;

std::optional<std::string> value_that(const Layout& layout, const Fits& fits) {
    // The frequency or the signal first, if they will do: they are what a receiver shows.
    for (const bool with_role : {true, false})
        for (const Value& value : layout.values)
            if (fits(value) && (!with_role || value.role != Role::none)) return value.name;
    return std::nullopt;
}

}  // namespace

const char* name_of(ItemKind kind) {
    constexpr const char* names[] = {
        "readout", "key", "legend", "lamp", "meter", "scale", "picture", "frame"};
    return names[static_cast<std::size_t>(kind)];
}

std::optional<ItemIndex> item_at(const Layout& layout, const std::string& pointer) {
    ItemIndex place;
    const auto number = [&](const std::string& before, std::size_t& at, int& into) {
        if (pointer.compare(at, before.size(), before) != 0) return false;
        const char* begin = pointer.data() + at + before.size();
        const auto [end, fault] = std::from_chars(begin, pointer.data() + pointer.size(), into);
        at = static_cast<std::size_t>(end - pointer.data());
        return fault == std::errc{} && into >= 0;
    };
    std::size_t at = 0;
    if (!number("/pages/", at, place.page) || !number("/items/", at, place.item) ||
        (at < pointer.size() && pointer[at] != '/'))
        return std::nullopt;
    if (static_cast<std::size_t>(place.page) >= layout.pages.size() ||
        static_cast<std::size_t>(place.item) >=
            layout.pages[static_cast<std::size_t>(place.page)].items.size())
        return std::nullopt;
    return place;
}

std::string item_pointer(const ItemIndex& place) {
    return "/pages/" + std::to_string(place.page) + "/items/" + std::to_string(place.item);
}

std::vector<Change> placed(const Item& item, const Box& box) {
    std::vector<Change> changes;
    set_number(changes, item.pointer + "/at/0", item.box.x, box.x);
    set_number(changes, item.pointer + "/at/1", item.box.y, box.y);
    if (item.kind == ItemKind::picture) return changes;
    set_number(changes, item.pointer + "/size/0", item.box.width, box.width);
    set_number(changes, item.pointer + "/size/1", item.box.height, box.height);
    return changes;
}

Additions duplicated(std::string_view document,
                     const Layout& layout,
                     std::span<const std::string> pointers,
                     const Shift& by) {
    Additions made;
    std::set<std::string> taken = item_names(layout);
    std::vector<std::string> order = last_first(layout, pointers);
    std::reverse(order.begin(), order.end());
    std::vector<std::size_t> lengths;
    for (const Page& page : layout.pages)
        lengths.push_back(page.items.size());
    for (const std::string& pointer : order) {
        const ItemIndex place = *item_at(layout, pointer);
        const Page& page = layout.pages[static_cast<std::size_t>(place.page)];
        const Item& item = page.items[static_cast<std::size_t>(place.item)];
        std::optional<std::string> value = value_at(document, pointer);
        if (!value) continue;
        const std::string list = "/pages/" + std::to_string(place.page) + "/items";
        std::size_t& length = lengths[static_cast<std::size_t>(place.page)];
        const std::string copy = list + "/" + std::to_string(length++);
        made.changes.push_back({Change::Kind::add, list + "/-", std::move(*value)});
        const bool named = written_at(document, pointer + "/name").has_value();
        made.changes.push_back({named ? Change::Kind::replace : Change::Kind::add,
                                copy + "/name",
                                json_text(free_name(item.name, taken))});
        const Box box =
            kept_on({0, 0, layout.glass_width(), layout.glass_height()}, moved(item.box, by));
        set_number(made.changes, copy + "/at/0", item.box.x, box.x);
        set_number(made.changes, copy + "/at/1", item.box.y, box.y);
        made.pointers.push_back(copy);
    }
    return made;
}

std::vector<Change> deleted(const Node& document, std::span<const std::string> pointers) {
    // Within one list a later item has the longer or greater pointer.
    std::vector<std::string> order(pointers.begin(), pointers.end());
    std::sort(order.begin(), order.end(), [](const std::string& a, const std::string& b) {
        return a.size() != b.size() ? a.size() > b.size() : a > b;
    });
    std::vector<Change> changes = waivers_following(document, after_removal(document, pointers));
    for (std::string& pointer : order)
        changes.push_back({Change::Kind::remove, std::move(pointer), {}});
    return changes;
}

Raised raised(std::string_view document,
              const Layout& layout,
              std::span<const std::string> pointers) {
    Raised made{{std::string(document), {}}, {}};
    const std::vector<std::string> order = last_first(layout, pointers);
    // The last one first: each comes to stand before those that went ahead of it.
    std::vector<std::size_t> behind(layout.pages.size(), 0);
    for (const std::string& pointer : order) {
        const ItemIndex place = *item_at(layout, pointer);
        const std::size_t page = static_cast<std::size_t>(place.page);
        const std::size_t last = layout.pages[page].items.size() - 1 - behind[page]++;
        const std::string list = "/pages/" + std::to_string(place.page) + "/items";
        const std::string there = list + pointer_part(last);
        if (!made.document.text) break;
        if (const std::optional<Node> tree = tree_of(*made.document.text); tree)
            made.document =
                amend(*made.document.text,
                      waivers_following(
                          *tree, after_move(list, static_cast<std::size_t>(place.item), last)));
        if (made.document.text) made.document = moved(*made.document.text, pointer, there);
        made.pointers.insert(made.pointers.begin(), there);
    }
    return made;
}

NewItem new_item(const Layout& layout, int page, ItemKind kind, int x, int y) {
    NewItem made;
    const Page& on = layout.pages[static_cast<std::size_t>(page)];
    const std::string ink = json_text(paint_on(layout, on.ground));
    const std::string ground = json_text(layout.paints[static_cast<std::size_t>(on.ground)].name);
    Box box{x, y, 60, 24};
    std::string members;
    bool needs_face = false;
    std::optional<std::string> value;

    const auto need_value = [&](const Fits& fits, const char* what) {
        value = value_that(layout, fits);
        if (!value) made.obstacle = std::string("the layout has no ") + what;
    };
    switch (kind) {
        case ItemKind::readout:
            need_value([](auto& v) { return v.type == ValueType::number; },
                       "number that a readout could show");
            needs_face = true;
            box.width = 120;
            members = ", \"ink\": " + ink;
            break;
        case ItemKind::key:
            needs_face = true;
            if (layout.looks.empty()) made.obstacle = "the layout has no look for keys";
            box.height = 40;
            members = ", \"text\": \"KEY\"";
            if (!layout.looks.empty()) members += ", \"look\": " + json_text(layout.looks[0].name);
            break;
        case ItemKind::legend:
            needs_face = true;
            members = ", \"text\": \"Legend\", \"ink\": " + ink;
            break;
        case ItemKind::lamp:
            need_value(
                [](auto& v) { return v.type == ValueType::choice || v.type == ValueType::flag; },
                "choice or flag that a lamp could show");
            needs_face = true;
            members = ", \"lit\": {\"ink\": " + ground + ", \"fill\": " + ink + "}";
            // A flag has no words of its own.
            if (value)
                for (const Value& known : layout.values)
                    if (known.name == *value && known.type == ValueType::flag)
                        members += ", \"text\": \"ON\", \"unlit\": {\"ink\": " + ink +
                                   ", \"fill\": " + ground + "}";
            break;
        case ItemKind::meter:
            need_value([](auto& v) { return v.type == ValueType::level; },
                       "level that a meter could show");
            box.width = 120;
            members = ", \"ink\": " + ink;
            break;
        case ItemKind::scale:
            need_value([](auto& v) { return v.type == ValueType::number && v.max - v.min >= 100; },
                       "number that a scale could show");
            needs_face = true;
            box.width = 120;
            box.height = 30;
            members =
                ", \"per_pixel\": 100, \"minor\": 1000, \"major\": 10000, \"divide\": 1000"
                ", \"ink\": " +
                ink;
            break;
        case ItemKind::picture:
            made.obstacle = "a picture is as large as its file: drop a PNG file on the glass";
            break;
        case ItemKind::frame:
            box.height = 40;
            members = ", \"ink\": " + ink;
            break;
    }
    std::string face;
    if (needs_face) {
        // The smallest raster face: the others are for digits.
        const Face* smallest = nullptr;
        for (const Face& known : layout.faces)
            if (known.kind == FaceKind::raster &&
                (smallest == nullptr ||
                 known.size * known.scale < smallest->size * smallest->scale))
                smallest = &known;
        if (smallest == nullptr && made.obstacle.empty())
            made.obstacle = "the layout has no face: drop a font file on the window";
        if (smallest != nullptr) face = ", \"face\": " + json_text(smallest->name);
    }
    if (!made.obstacle.empty()) return made;

    std::set<std::string> taken = item_names(layout);
    const std::string name = free_name(std::string("new ") + name_of(kind), taken);
    box = kept_on({0, 0, layout.glass_width(), layout.glass_height()}, box);
    std::string text = std::string("{\"kind\": \"") + name_of(kind) +
                       "\", \"name\": " + json_text(name) + ", \"at\": [" + std::to_string(box.x) +
                       ", " + std::to_string(box.y) + "], \"size\": [" + std::to_string(box.width) +
                       ", " + std::to_string(box.height) + "]";
    if (value) text += ", \"value\": " + json_text(*value);
    text += face + members + "}";
    const std::string list = "/pages/" + std::to_string(page) + "/items";
    made.additions.changes.push_back({Change::Kind::add, list + "/-", std::move(text)});
    made.additions.pointers.push_back(list + "/" + std::to_string(on.items.size()));
    return made;
}

}  // namespace dialplate

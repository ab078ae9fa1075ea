// From what a hand does on the page to changes of the document: move, size, duplicate, delete, new.
#pragma once

#include "sim/edit/placing.hpp"
#include "sim/layout/amend.hpp"
#include "sim/layout/json_tree.hpp"
#include "sim/layout/layout.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace dialplate {

/// Where an item is in a layout.
struct ItemIndex {
    int page = 0, item = 0;
};
/// @return Nothing if the pointer names no item.
std::optional<ItemIndex> item_at(const Layout& layout, const std::string& pointer);
[[nodiscard]] std::string item_pointer(const ItemIndex& place);

/// Puts an item into a box. Only numbers that differ are changed; a picture is as large as its file and keeps
/// its size.
std::vector<Change> placed(const Item& item, const Box& box);

/// New items and where they then are.
struct Additions {
    std::vector<Change> changes;
    std::vector<std::string> pointers;
};

/// Copies of items, behind the last one of their page and moved by some pixels; names get a number.
/// @pre `document` is the text that `layout` was read from.
Additions duplicated(std::string_view document,
                     const Layout& layout,
                     std::span<const std::string> pointers,
                     const Shift& by);

/// Takes items out of the document, and the waivers that speak of them.
std::vector<Change> deleted(const Node& document, std::span<const std::string> pointers);

/// Items moved to the end of their page's list, where they are drawn last; their waivers follow.
struct Raised {
    Amended document;
    std::vector<std::string> pointers;  ///< Where they then are.
};
Raised raised(std::string_view document,
              const Layout& layout,
              std::span<const std::string> pointers);

/// A new item of a kind on a page, with the first paints, faces and values of the layout that will do.
struct NewItem {
    Additions additions;
    std::string obstacle;  ///< Why there can be none; empty if there can.
};
NewItem new_item(const Layout& layout, int page, ItemKind kind, int x, int y);

[[nodiscard]] const char* name_of(ItemKind kind);

}  // namespace dialplate

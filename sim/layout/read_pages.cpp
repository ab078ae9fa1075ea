// Pages, and what all items have.
#include "sim/layout/read_item.hpp"

#include <array>

namespace dialplate {
namespace {

constexpr MemberName page_members[] = {{"name", true}, {"ground", true}, {"items", true}};
constexpr MemberName any_item_members[] = {{"kind", true}};

constexpr Word<ItemKind> kinds[] = {
    {"readout", ItemKind::readout},
    {"key", ItemKind::key},
    {"legend", ItemKind::legend},
    {"lamp", ItemKind::lamp},
    {"meter", ItemKind::meter},
    {"scale", ItemKind::scale},
    {"picture", ItemKind::picture},
    {"frame", ItemKind::frame},
};

// Position and size. A wrong one becomes the largest there is, so that limits that depend on the size
// are not reported as well.
Box read_box(const Members& members, bool sized) {
    constexpr Range position{0, farthest_pixel - 1, "ten bits in the image"};
    constexpr Range extent{1, farthest_pixel, "ten bits in the image"};
    const auto at = members.pair("at", {position, position});
    Box box;
    if (at) {
        box.x = (*at)[0];
        box.y = (*at)[1];
    }
    if (!sized) return box;
    const auto size = members.pair("size", {extent, extent});
    box.width = size ? (*size)[0] : farthest_pixel;
    box.height = size ? (*size)[1] : farthest_pixel;
    if (at && size && (box.right() > farthest_pixel || box.bottom() > farthest_pixel)) {
        members.fail("size",
                     "out-of-range",
                     "puts its end at " + std::to_string(box.right()) + ", " +
                         std::to_string(box.bottom()) + "; allowed is up to " +
                         std::to_string(farthest_pixel) + " (ten bits in the image)");
    }
    return box;
}

void read_item_name(const Members& members, Item& item, Draft& draft) {
    const std::optional<std::string> name = members.text("name", {.least = 0});
    if (!name) return;
    const Place place = members.find("name")->place;
    const std::string pointer = members.pointer_of("name");
    if (!check_name(*name, "item", pointer, place, draft.mistakes)) return;
    item.name = *name;
    const auto [earlier, fresh] = draft.item_names.emplace(*name, place);
    if (fresh) return;
    draft.mistakes.add({"duplicate-name",
                        pointer,
                        place,
                        "the item name " + quote(*name) + " is given twice; first in line " +
                            std::to_string(earlier->second.line)});
}

std::optional<Item> read_item(const Node& node,
                              const std::string& pointer,
                              PaintId ground,
                              Draft& draft) {
    const Word<ItemKind>* kind = nullptr;
    const Node* const written = node.find("kind");
    for (const Word<ItemKind>& each : kinds) {
        if (written != nullptr && written->text == each.word) kind = &each;
    }
    if (kind == nullptr) {
        // Its other members cannot be judged: each kind has its own.
        Node alone;
        alone.kind = node.kind;
        alone.place = node.place;
        alone.text = node.text;
        alone.boolean = node.boolean;
        alone.elements = node.elements;
        if (written != nullptr) alone.members.push_back({"kind", written->place, *written});
        const Members members(alone, pointer, {"item"}, any_item_members, draft.mistakes);
        members.one_of("kind", std::span<const Word<ItemKind>>(kinds));
        return std::nullopt;
    }
    const Members members(
        node, pointer, {kind->word, name_in(node)}, members_of(kind->meaning), draft.mistakes);
    Item item;
    item.kind = kind->meaning;
    item.pointer = pointer;
    read_item_name(members, item, draft);
    item.box = read_box(members, item.kind != ItemKind::picture);
    switch (item.kind) {
        case ItemKind::readout:
            read_readout(members, ground, item, draft);
            break;
        case ItemKind::key:
            read_key(members, item, draft);
            break;
        case ItemKind::legend:
            read_legend(members, ground, item, draft);
            break;
        case ItemKind::lamp:
            read_lamp(members, item, draft);
            break;
        case ItemKind::meter:
            read_meter(members, ground, item, draft);
            break;
        case ItemKind::scale:
            read_scale(members, ground, item, draft);
            break;
        case ItemKind::picture:
            read_picture(members, ground, item, draft);
            break;
        case ItemKind::frame:
            read_frame(members, item, draft);
            break;
    }
    return item;
}

// Names of pages first: keys turn to pages that come later.
void collect_page_names(const Node& list, const std::string& pointer, Draft& draft) {
    for (std::size_t i = 0; i < list.elements.size(); ++i) {
        const Node* const name = list.elements[i].find("name");
        if (name == nullptr || name->kind != Node::Kind::text) {
            draft.pages.add_nameless(list.elements[i].place);
            draft.pages.unreadable();
            continue;
        }
        if (draft.pages.add(name->text, name->place)) continue;
        const int first = draft.pages.index(name->text).value_or(0);
        draft.mistakes.add({"duplicate-name",
                            pointer + pointer_part(i) + "/name",
                            name->place,
                            "the page name " + quote(name->text) +
                                " is given twice; first in line " +
                                std::to_string(draft.pages.place(first).line)});
        draft.pages.add_nameless(name->place);
    }
}

// "key-3": the third key of the layout, unless the author has used that name.
void name_the_nameless(Draft& draft) {
    std::array<int, std::size(kinds)> counts{};
    for (Page& page : draft.layout.pages) {
        for (Item& item : page.items) {
            const auto kind = static_cast<std::size_t>(item.kind);
            ++counts[kind];
            if (!item.name.empty()) continue;
            item.name = std::string(kinds[kind].word) + '-' + std::to_string(counts[kind]);
            while (!draft.item_names.emplace(item.name, Place{}).second)
                item.name += '\'';
        }
    }
}

}  // namespace

void read_pages(const Members& document, Draft& draft) {
    const Node* const list = document.list("pages", {1, most_pages});
    if (list == nullptr) return;
    collect_page_names(*list, document.pointer_of("pages"), draft);
    for (std::size_t i = 0; i < list->elements.size(); ++i) {
        Page page;
        page.pointer = document.pointer_of("pages") + pointer_part(i);
        const Node& node = list->elements[i];
        const Members members(
            node, page.pointer, {"page", name_in(node)}, page_members, draft.mistakes);
        if (const auto name = members.text("name", {.least = 0})) {
            check_name(*name,
                       "page",
                       members.pointer_of("name"),
                       members.find("name")->place,
                       draft.mistakes);
            page.name = *name;
        }
        page.ground = draft.paints.find_or(members, "ground", 0);
        const Node* const items = members.list("items", {0, std::int64_t{1} << 32});
        if (items != nullptr) {
            page.items.reserve(items->elements.size());
            for (std::size_t k = 0; k < items->elements.size(); ++k) {
                auto item = read_item(items->elements[k],
                                      members.pointer_of("items") + pointer_part(k),
                                      page.ground,
                                      draft);
                if (item) page.items.push_back(std::move(*item));
            }
        }
        draft.layout.pages.push_back(std::move(page));
    }
    name_the_nameless(draft);
}

}  // namespace dialplate

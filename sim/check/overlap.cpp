// overlap: the items of a page keep clear of each other, so that no pixel is drawn twice.
//
// A frame may have items inside it. Wholly inside its line, that is, or wholly beside it: the fill of a
// frame is cut into rectangles around the items, and an item across its line would break the line.
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/sweep.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>

namespace dialplate::rule {

namespace {

constexpr RuleSource overlap_sources[] = {
    {"the engine's own rule: no pixel is drawn twice", Trust::derived},
};

bool draws_nothing(const Item& item) {
    return item.kind == ItemKind::frame && item.frame.line == 0 && !item.frame.fill;
}

bool may_share(const Item& a, const Item& b) {
    if (draws_nothing(a) || draws_nothing(b)) return true;
    if (a.kind == ItemKind::frame && inside_line(b.box, a)) return true;
    return b.kind == ItemKind::frame && inside_line(a.box, b);
}

/// What an item has in common with the others, kept to one finding an item.
struct Clash {
    const Item* with = nullptr;
    Box shared;
    int others = 0;
};

int area(const Box& box) {
    return box.width * box.height;
}

Box intersection(const Box& a, const Box& b) {
    const int x = std::max(a.x, b.x), y = std::max(a.y, b.y);
    return {.x = x,
            .y = y,
            .width = std::min(a.right(), b.right()) - x,
            .height = std::min(a.bottom(), b.bottom()) - y};
}

/// How far one of them has to go to be clear of the other, by the shorter way in each direction.
std::string parting(const Box& a, const Box& b) {
    const int sideways = std::min(a.right() - b.x, b.right() - a.x);
    const int upright = std::min(a.bottom() - b.y, b.bottom() - a.y);
    return std::to_string(sideways) + " px sideways or " + std::to_string(upright) +
           " px up or down would part them";
}

std::string sentence(const Item& item, const Clash& clash) {
    const Item& with = *clash.with;
    const bool framed = with.kind == ItemKind::frame || item.kind == ItemKind::frame;
    std::string text = called(item);
    text += framed ? " lies neither inside nor beside " : " overlaps ";
    text += called(with) + ": they share " + std::to_string(clash.shared.width) + " x " +
            std::to_string(clash.shared.height) + " px, allowed is 0; ";
    text += parting(item.box, with.box);
    if (clash.others > 0) {
        text += "; it meets " + counted(clash.others, "other item", "other items") + " as well";
    }
    return text;
}

void find_overlap(const Subject& subject, std::vector<Finding>& found) {
    for (const Page& page : subject.layout.pages) {
        std::vector<Box> boxes;
        boxes.reserve(page.items.size());
        for (const Item& item : page.items)
            boxes.push_back(item.box);

        std::vector<Clash> clashes(page.items.size());
        sweep_near(boxes, 0, [&](std::size_t a, std::size_t b) {
            const auto [earlier, later] = std::minmax(a, b);
            if (may_share(page.items[earlier], page.items[later])) return;
            const Box shared = intersection(boxes[a], boxes[b]);
            Clash& clash = clashes[later];
            if (clash.with == nullptr) {
                clash = {.with = &page.items[earlier], .shared = shared, .others = 0};
                return;
            }
            ++clash.others;
            if (area(shared) > area(clash.shared)) {
                clash.with = &page.items[earlier];
                clash.shared = shared;
            }
        });
        for (std::size_t i = 0; i < clashes.size(); ++i) {
            if (clashes[i].with == nullptr) continue;
            add_finding(found,
                        Severity::must,
                        page.items[i].pointer,
                        {static_cast<double>(area(clashes[i].shared)), 0, "px"},
                        sentence(page.items[i], clashes[i]));
        }
    }
}

}  // namespace

const Rule overlap{
    .name = "overlap",
    .sentence =
        "Items of a page keep clear of each other; a frame has them inside its line or beside it.",
    .computed =
        "The pixels that two items of a page have in common. A frame may have items wholly inside "
        "its line or wholly beside it.",
    .formula =
        "shared = (min(right, right') - max(left, left')) * (min(bottom, bottom') - max(top, "
        "top')) = 0",
    .sources = overlap_sources,
    .figures = {},
    .find = find_overlap,
};

}  // namespace dialplate::rule

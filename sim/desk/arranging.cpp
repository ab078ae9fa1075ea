#include "sim/desk/arranging.hpp"

#include "sim/desk/glass_marks.hpp"
#include "sim/desk/grid.hpp"
#include "sim/edit/item_changes.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <numeric>

namespace dialplate {
namespace {

/// Screen pixels that a hand may tremble without anything moving.
constexpr int still = 3;
/// Screen pixels within which a line catches.
constexpr int catching = 6;

const Page& page_of(const Bench& bench) {
    return bench.piece.layout().pages[static_cast<std::size_t>(bench.piece.prototype()->page())];
}

Box whole_glass(const Bench& bench) {
    return {0, 0, bench.piece.layout().glass_width(), bench.piece.layout().glass_height()};
}

const Item* find_item(const Bench& bench, const std::string& pointer) {
    const std::optional<ItemIndex> place = item_at(bench.piece.layout(), pointer);
    if (!place) return nullptr;
    return &bench.piece.layout()
                .pages[static_cast<std::size_t>(place->page)]
                .items[static_cast<std::size_t>(place->item)];
}

/// The chosen items that are there.
std::vector<const Item*> chosen_items(const Bench& bench) {
    std::vector<const Item*> items;
    for (const std::string& pointer : bench.session.chosen())
        if (const Item* item = find_item(bench, pointer)) items.push_back(item);
    return items;
}

std::string what_moves(const std::vector<const Item*>& items) {
    return items.size() == 1 ? items[0]->name : std::to_string(items.size()) + " items";
}

void place_all(Bench& bench,
               const std::vector<const Item*>& items,
               const std::vector<Box>& boxes,
               const std::string& name,
               const std::string& stroke = {}) {
    std::vector<Change> changes;
    for (std::size_t i = 0; i < items.size(); ++i)
        for (Change& change : placed(*items[i], boxes[i]))
            changes.push_back(std::move(change));
    if (!changes.empty()) bench.want(std::move(changes), name, stroke);
}

std::vector<Box> boxes_of(const std::vector<const Item*>& items) {
    std::vector<Box> boxes;
    for (const Item* item : items)
        boxes.push_back(item->box);
    return boxes;
}

/// The part of a shift that leaves all of them on the glass.
Shift kept_shift(const Box& glass, const Box& all, const Shift& by) {
    const Box there = kept_on(glass, moved(all, by));
    return {there.x - all.x, there.y - all.y};
}

void nudge(Bench& bench, const Shift& by) {
    const std::vector<const Item*> items = chosen_items(bench);
    if (items.empty()) return;
    std::vector<Box> boxes = boxes_of(items);
    const Shift shift = kept_shift(whole_glass(bench), around(boxes), by);
    for (Box& box : boxes)
        box = moved(box, shift);
    place_all(bench, items, boxes, "move " + what_moves(items), "nudge");
}

void size(Bench& bench, const Shift& by) {
    std::vector<const Item*> items = chosen_items(bench);
    std::erase_if(items, [](const Item* item) { return item->kind == ItemKind::picture; });
    if (items.empty()) return;
    std::vector<Box> boxes = boxes_of(items);
    for (Box& box : boxes)
        box = kept_on(whole_glass(bench), pulled(box, {by.x != 0, by.y != 0}, by));
    place_all(bench, items, boxes, "size " + what_moves(items), "size");
}

void add(Bench& bench, Additions additions, const std::string& name) {
    bench.want(std::move(additions.changes), name);
    bench.wanted.back().choose = std::move(additions.pointers);
}

void raise(Bench& bench, const std::string& name) {
    Raised up = raised(bench.session.text(), bench.piece.layout(), bench.session.chosen());
    bench.want(std::move(up.document), name, {});
    if (!bench.wanted.empty()) bench.wanted.back().choose = std::move(up.pointers);
}

void choose_next(Bench& bench, int by) {
    const Page& page = page_of(bench);
    const int count = static_cast<int>(page.items.size());
    if (count == 0) return;
    int at = by > 0 ? -1 : count;
    if (!bench.session.chosen().empty())
        for (int i = 0; i < count; ++i)
            if (page.items[static_cast<std::size_t>(i)].pointer == bench.session.chosen().back())
                at = i;
    at = (at + by + count) % count;
    bench.session.choose({page.items[static_cast<std::size_t>(at)].pointer});
}

void insert(Bench& bench, ItemKind kind) {
    const int page = bench.piece.prototype()->page();
    const Box glass = whole_glass(bench);
    NewItem made =
        new_item(bench.piece.layout(), page, kind, glass.width / 2 - 30, glass.height / 2 - 12);
    if (!made.obstacle.empty()) {
        bench.notice =
            Notice{"No new " + std::string(name_of(kind)) + ": " + made.obstacle + ".", true};
        return;
    }
    add(bench, std::move(made.additions), std::string("new ") + name_of(kind));
}

}  // namespace

const Item* Arranging::item_under(int x, int y) const {
    const std::vector<Item>& items = page_of(bench_).items;
    // What is drawn last lies on top.
    const auto found = std::find_if(items.rbegin(), items.rend(), [&](const Item& item) {
        return bench_.plan.on_screen(item.box).holds(x, y);
    });
    return found == items.rend() ? nullptr : &*found;
}

std::optional<Pull> Arranging::grip_under(int x, int y) const {
    if (bench_.session.chosen().size() != 1) return std::nullopt;
    const Item* item = find_item(bench_, bench_.session.chosen()[0]);
    if (item == nullptr || item->kind == ItemKind::picture) return std::nullopt;
    const Area area = bench_.plan.on_screen(item->box);
    const int reach = (grip_reach + 2) * bench_.plan.letter;
    for (const Pull& pull : pulls) {
        const int gx = area.x + area.width * (pull.x + 1) / 2;
        const int gy = area.y + area.height * (pull.y + 1) / 2;
        if (std::abs(x - gx) <= reach && std::abs(y - gy) <= reach) return pull;
    }
    return std::nullopt;
}

void Arranging::begin(Doing doing, int x, int y) {
    doing_ = doing;
    x_ = x;
    y_ = y;
    moved_ = false;
    from_.clear();
    for (const Item* item : chosen_items(bench_))
        from_.emplace_back(item->pointer, item->box);
}

void Arranging::press(int x, int y, const Held& held) {
    if (!bench_.true_to_text()) return;
    if (const std::optional<Pull> pull = grip_under(x, y)) {
        pull_ = *pull;
        return begin(Doing::pulling, x, y);
    }
    const Item* item = bench_.plan.glass.holds(x, y) ? item_under(x, y) : nullptr;
    if (item == nullptr) {
        if (!held.shift) bench_.session.choose({});
        chosen_before_ = bench_.session.chosen();
        return begin(Doing::banding, x, y);
    }
    if (held.shift) {
        bench_.session.choose_also(item->pointer);
        if (!bench_.session.has_chosen(item->pointer)) return;
    } else if (!bench_.session.has_chosen(item->pointer)) {
        bench_.session.choose({item->pointer});
    }
    pull_ = {};
    begin(Doing::moving, x, y);
}

void Arranging::move(int x, int y, const Held& held) {
    if (doing_ == Doing::nothing) return;
    if (!moved_ && std::abs(x - x_) < still && std::abs(y - y_) < still) return;
    moved_ = true;
    if (doing_ == Doing::banding) return band(x, y);
    drag({static_cast<int>(std::lround((x - x_) / bench_.plan.scale_x)),
          static_cast<int>(std::lround((y - y_) / bench_.plan.scale_y))},
         held);
}

void Arranging::drag(const Shift& by, const Held& held) {
    if (from_.empty()) return;
    const Box glass = whole_glass(bench_);
    std::vector<Box> boxes, others;
    for (const auto& [pointer, box] : from_)
        boxes.push_back(box);
    for (const Item& item : page_of(bench_).items)
        if (!bench_.session.has_chosen(item.pointer)) others.push_back(item.box);

    const Box all = around(boxes);
    const bool pulling = doing_ == Doing::pulling;
    Box there = pulling ? pulled(all, pull_, by) : moved(all, kept_shift(glass, all, by));
    Catch on;
    if (!held.alt) {
        const int reach = std::max(1, static_cast<int>(catching / bench_.plan.scale_x));
        on = caught(there,
                    pull_,
                    lines_of(glass, others, pitch_of(bench_.habits.grid, bench_.piece.layout())),
                    reach);
        there = pulling ? pulled(there, pull_, on.shift) : moved(there, on.shift);
    }
    if (pulling) {
        there = kept_on(glass, there);
        boxes[0] = there;
    } else {
        const Shift shift = kept_shift(glass, all, {there.x - all.x, there.y - all.y});
        for (Box& box : boxes)
            box = moved(box, shift);
    }
    bench_.hand.line_x = on.line_x;
    bench_.hand.line_y = on.line_y;
    std::vector<const Item*> items;
    for (const auto& [pointer, box] : from_)
        if (const Item* item = find_item(bench_, pointer)) items.push_back(item);
    if (items.size() != boxes.size()) return;
    place_all(bench_,
              items,
              boxes,
              (pulling ? "size " : "move ") + what_moves(items),
              pulling ? "pull" : "drag");
}

void Arranging::band(int x, int y) {
    bench_.hand.band =
        Area{std::min(x, x_), std::min(y, y_), std::abs(x - x_) + 1, std::abs(y - y_) + 1};
    Chosen chosen = chosen_before_;
    for (const Item& item : page_of(bench_).items) {
        const Area area = bench_.plan.on_screen(item.box);
        // All of it: a band around a few keys does not take the frame behind them.
        if (common_part(area, *bench_.hand.band) == area &&
            std::find(chosen.begin(), chosen.end(), item.pointer) == chosen.end())
            chosen.push_back(item.pointer);
    }
    bench_.session.choose(std::move(chosen));
}

void Arranging::release() {
    if (doing_ == Doing::nothing) return;
    doing_ = Doing::nothing;
    bench_.session.end_stroke();
    bench_.hand.line_x.reset();
    bench_.hand.line_y.reset();
    bench_.hand.band.reset();
}

bool do_deed(Bench& bench, const Ordered& ordered) {
    if (bench.mode != Mode::arrange || !bench.true_to_text()) return false;
    const std::vector<const Item*> items = chosen_items(bench);
    const std::string& text = bench.session.text();
    const Layout& layout = bench.piece.layout();
    switch (ordered.order) {
        case Order::nudge_x:
            nudge(bench, {ordered.by, 0});
            return true;
        case Order::nudge_y:
            nudge(bench, {0, ordered.by});
            return true;
        case Order::size_x:
            size(bench, {ordered.by, 0});
            return true;
        case Order::size_y:
            size(bench, {0, ordered.by});
            return true;
        case Order::align:
            if (items.size() > 1)
                place_all(bench,
                          items,
                          aligned(boxes_of(items), static_cast<Edge>(ordered.by)),
                          "align " + what_moves(items));
            return true;
        case Order::distribute:
            place_all(bench,
                      items,
                      distributed(boxes_of(items), ordered.by == 0),
                      "same gaps for " + what_moves(items));
            return true;
        case Order::duplicate:
            if (!items.empty())
                add(bench,
                    duplicated(text, layout, bench.session.chosen(), {8, 8}),
                    "duplicate " + what_moves(items));
            return true;
        case Order::raise:
            if (!items.empty()) raise(bench, "draw " + what_moves(items) + " last");
            return true;
        case Order::remove:
            if (!items.empty()) {
                bench.want(deleted(*bench.document(), bench.session.chosen()),
                           "delete " + what_moves(items));
                bench.wanted.back().choose = Chosen{};
            }
            return true;
        case Order::choose_all: {
            Chosen all;
            for (const Item& item : page_of(bench).items)
                all.push_back(item.pointer);
            bench.session.choose(std::move(all));
            return true;
        }
        case Order::choose:
            choose_next(bench, ordered.by);
            return true;
        case Order::insert:
            insert(bench, static_cast<ItemKind>(ordered.by));
            return true;
        default:
            return false;
    }
}

}  // namespace dialplate

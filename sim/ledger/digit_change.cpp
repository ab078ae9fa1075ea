#include "sim/ledger/digit_change.hpp"

#include "sim/layout/item_values.hpp"
#include "sim/ledger/draw_time.hpp"
#include "sim/prototype/parts_used.hpp"
#include "sim/prototype/prototype.hpp"

#include <algorithm>
#include <cstdint>
#include <vector>

namespace dialplate {
namespace {

struct Timed {
    EventTime event;
    friend bool operator<(const Timed& a, const Timed& b) { return a.event.time < b.event.time; }
};

/// The numbers that differ in the last digit shown and in nothing else, near where the value starts.
std::vector<std::int64_t> neighbours(const Value& value, int drop) {
    std::int64_t unit = 1;
    for (int i = 0; i < drop; ++i)
        unit *= 10;
    const auto from = [&](std::int64_t base) {
        std::vector<std::int64_t> numbers;
        for (std::int64_t digit = 0; digit < 10; ++digit) {
            const std::int64_t number = base + digit * unit;
            if (number >= value.min && number <= value.max) numbers.push_back(number);
        }
        return numbers;
    };
    const std::int64_t ten = 10 * unit;
    const std::int64_t base = std::max<std::int64_t>(0, value.start) / ten * ten;
    std::vector<std::int64_t> best = from(base);
    for (const std::int64_t other : {base - ten, base + ten}) {
        if (other < 0) continue;
        std::vector<std::int64_t> numbers = from(other);
        if (numbers.size() > best.size()) best = std::move(numbers);
    }
    return best;
}

/// The layout without what shows the readout's value beside it; nothing if there is no such thing.
std::optional<Layout> alone(const Layout& layout, std::size_t page, std::size_t item) {
    const std::vector<Item>& items = layout.pages[page].items;
    const ValueId value = items[item].readout.value;
    Layout fewer = layout;
    std::vector<Item>& kept = fewer.pages[page].items;
    kept.clear();
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::vector<ValueId> values = values_of(items[i]);
        if (i == item || std::find(values.begin(), values.end(), value) == values.end())
            kept.push_back(items[i]);
    }
    if (kept.size() == items.size()) return std::nullopt;
    return fewer;
}

}  // namespace

std::optional<DigitChange> digit_change(const Layout& layout,
                                        const BuiltImage& built,
                                        std::size_t page,
                                        std::size_t item) {
    const Readout& readout = layout.pages[page].items[item].readout;
    const std::vector<std::int64_t> numbers =
        neighbours(layout.values[static_cast<std::size_t>(readout.value)], readout.drop);
    if (numbers.size() < 2) return std::nullopt;

    const PartSet parts = parts_used(layout, built);
    std::optional<Layout> fewer = alone(layout, page, item);
    std::optional<BuiltImage> rebuilt;
    if (fewer) rebuilt = build_image(*fewer).image;
    const bool is_alone = rebuilt.has_value();
    Prototype prototype(is_alone ? *fewer : layout, is_alone ? *rebuilt : built);
    prototype.show_page(static_cast<int>(page));
    prototype.settle();
    std::vector<Timed> changes;
    for (const std::int64_t was : numbers) {
        for (const std::int64_t is : numbers) {
            if (was == is) continue;
            prototype.set(readout.value, static_cast<std::int32_t>(was));
            prototype.settle();
            prototype.set(readout.value, static_cast<std::int32_t>(is));
            Happening happening;
            happening.update = prototype.settle();
            changes.push_back({timed(happening, layout, parts)});
        }
    }
    const auto half = changes.begin() + static_cast<std::ptrdiff_t>(changes.size() / 2);
    std::nth_element(changes.begin(), half, changes.end());
    const EventTime& median = half->event;
    return DigitChange{.median = median.time,
                       .worst = std::max_element(changes.begin(), changes.end())->event.time,
                       .bus_bytes = median.bus_bytes,
                       .share_of_limit = median.share_of_limit};
}

}  // namespace dialplate

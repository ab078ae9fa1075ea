// A play made from a layout, on the PC, for firmware to perform: play.hpp.
#pragma once

#include "sim/layout/layout.hpp"
#include "tests/firmware/portable/play.hpp"

#include <cstdint>
#include <initializer_list>
#include <random>
#include <vector>

namespace dialplate {

/// Orders of tests/firmware/portable/play.hpp.
class Orders {
public:
    void set(std::size_t value, std::int64_t to) {
        add({play::set, static_cast<std::uint8_t>(value)});
        word(to);
        word(to >> 16);
    }
    void page(std::size_t number) { add({play::page, static_cast<std::uint8_t>(number)}); }
    void palette(std::size_t number) { add({play::palette, static_cast<std::uint8_t>(number)}); }
    void pass(int milliseconds) {
        add({play::pass});
        word(milliseconds);
    }
    void serve(int at_most = 0) { add({play::serve, static_cast<std::uint8_t>(at_most)}); }
    void touch(int x, int y) {
        add({play::touch});
        word(x);
        word(y);
        serve();
    }
    void lift() {
        add({play::lift});
        serve();
    }
    [[nodiscard]] std::vector<std::uint8_t> ended() const {
        std::vector<std::uint8_t> all = bytes_;
        all.push_back(play::end);
        return all;
    }

private:
    void add(std::initializer_list<int> bytes) {
        for (const int byte : bytes)
            bytes_.push_back(static_cast<std::uint8_t>(byte));
    }
    void word(std::int64_t number) {
        add({static_cast<int>(number & 0xFF), static_cast<int>(number >> 8 & 0xFF)});
    }
    std::vector<std::uint8_t> bytes_;
};

/// A value to its ends and back, and a number past each power of ten that it can reach.
inline void walk(Orders& orders, const Value& value, std::size_t number) {
    std::vector<std::int64_t> stations = {value.max, value.min};
    for (std::int64_t power = 10; power <= value.max; power *= 10) {
        if (value.type == ValueType::choice || power - 1 < value.min) continue;
        stations.push_back(power - 1);
        stations.push_back(power);
    }
    for (std::int64_t choice = 0; value.type == ValueType::choice && choice <= value.max; ++choice)
        stations.push_back(choice);
    stations.push_back(value.start);
    for (const std::int64_t to : stations) {
        orders.set(number, to);
        orders.serve();
    }
}

/// Every page, on it every value, and each of its keys tapped, held and slid off; every palette; a mixture in
/// which drawing lags behind.
inline std::vector<std::uint8_t> orders_for(const Layout& layout) {
    Orders orders;
    for (std::size_t v = 0; v < layout.values.size(); ++v)
        orders.set(v, layout.values[v].start);
    for (std::size_t p = 0; p < layout.pages.size(); ++p) {
        orders.page(p);
        orders.serve();
        for (std::size_t v = 0; v < layout.values.size(); ++v)
            walk(orders, layout.values[v], v);
        for (const Item& item : layout.pages[p].items) {
            if (item.kind != ItemKind::key) continue;
            const int x = item.box.x + item.box.width / 2, y = item.box.y + item.box.height / 2;
            orders.touch(x, y);
            orders.pass(1000);
            orders.serve();
            orders.touch(0, y);
            orders.lift();
            if (item.key.tap.kind == ActionKind::page) continue;  // a whole page each
            orders.touch(x, y);
            orders.pass(80);
            orders.lift();
        }
    }
    for (std::size_t palette = layout.palettes.size(); palette-- > 1;) {
        orders.palette(palette);
        orders.serve();
    }
    if (layout.palettes.size() > 1) orders.palette(0);
    orders.page(0);
    std::mt19937 random(1);
    const auto below = [&random](std::int64_t limit) {
        return static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(limit));
    };
    for (int step = 0; step < 200 && !layout.values.empty(); ++step) {
        const auto v = static_cast<std::size_t>(below(std::ssize(layout.values)));
        const Value& value = layout.values[v];
        orders.set(v, value.min + below(std::int64_t{value.max} - value.min + 1));
        orders.pass(static_cast<int>(below(200)));
        orders.serve(static_cast<int>(1 + below(5)));
    }
    orders.serve();
    return orders.ended();
}

}  // namespace dialplate

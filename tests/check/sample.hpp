// A sound little layout in memory, for rules to be shown one mistake at a time: a 2.8 inch display of
// 320 x 240 pixels at 0.180 mm, read from 500 mm. Pages, items and paints are added by the tests.
#pragma once

#include "sim/check/check.hpp"
#include "sim/layout/colour.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace dialplate::sample {

struct Sample {
    Layout layout;
    BuiltImage image;
    Ledger ledger;

    static constexpr FaceId words = 0;  ///< Capitals 17 px high: 21.0' at 500 mm.
    PaintId black = 0, white = 0;
    ValueId lock = 0;  ///< A flag.

    Sample() {
        layout.file = "sample.json";
        layout.display.width = 240;
        layout.display.height = 320;
        layout.display.active_width = Millimetres{43.2};
        layout.display.active_height = Millimetres{57.6};
        layout.turn = 90;
        layout.mcu.name = "ATmega328P";
        layout.mcu.object_max = Bytes{32767};
        layout.palettes = {"main"};
        Face face;
        face.name = "words";
        face.file = "words.bdf";
        face.size = 22;
        layout.faces.push_back(face);
        image.measures.push_back({.face = words, .capital = 17, .x_height = 12});
        black = paint("black", 0x000000);
        white = paint("white", 0xFFFFFF);
        Value flag;
        flag.name = "lock";
        flag.type = ValueType::flag;
        flag.max = 1;
        layout.values.push_back(flag);
        Look look;
        look.name = "plain";
        look.idle = {.ink = black, .fill = white, .edge = white};
        look.pressed = {.ink = white, .fill = black, .edge = white};
        look.active = look.pressed;
        look.disabled = look.idle;
        layout.looks.push_back(look);
        ledger.mcu = "ATmega328P";
        page("main");
    }

    PaintId paint(const std::string& name, std::uint32_t rgb888) {
        Paint made;
        made.name = name;
        made.rgb888 = rgb888;
        made.rgb565 = pack_rgb565(rgb888);
        layout.paints.push_back(made);
        return static_cast<PaintId>(layout.paints.size() - 1);
    }

    Page& page(const std::string& name) {
        Page made;
        made.name = name;
        made.ground = black;
        made.pointer = "/pages/" + std::to_string(layout.pages.size());
        layout.pages.push_back(made);
        return layout.pages.back();
    }

    /// Adds an item to the last page. The reference holds until the next one is added.
    Item& add(ItemKind kind, const Box& box) {
        Page& on = layout.pages.back();
        Item made;
        made.kind = kind;
        made.box = box;
        made.name = "item " + std::to_string(on.items.size());
        made.pointer = on.pointer + "/items/" + std::to_string(on.items.size());
        on.items.push_back(made);
        return on.items.back();
    }

    Item& add_key(const Box& box) {
        Item& item = add(ItemKind::key, box);
        item.key.text = "AM";
        item.key.tap.kind = ActionKind::toggle;
        item.key.tap.value = lock;
        return item;
    }

    Item& add_legend(const Box& box, PaintId ink, PaintId ground) {
        Item& item = add(ItemKind::legend, box);
        item.legend = {.text = "SIGNAL", .face = words, .ink = ink, .ground = ground};
        return item;
    }

    Item& add_frame(const Box& box, int line, std::optional<PaintId> fill = std::nullopt) {
        Item& item = add(ItemKind::frame, box);
        item.frame = {.ink = white, .line = line, .fill = fill};
        return item;
    }

    [[nodiscard]] std::vector<Finding> all() const {
        return check({.layout = layout, .image = image, .ledger = ledger});
    }

    /// What one rule finds.
    [[nodiscard]] std::vector<Finding> found(const std::string& rule) const {
        std::vector<Finding> kept;
        for (const Finding& finding : all())
            if (finding.rule == rule) kept.push_back(finding);
        return kept;
    }
};

/// The only finding of a rule; fails the test when there is not exactly one.
inline Finding only(const std::vector<Finding>& found) {
    EXPECT_EQ(found.size(), 1u);
    for (const Finding& finding : found)
        EXPECT_FALSE(finding.source.empty()) << finding.message;
    return found.empty() ? Finding{} : found.front();
}

}  // namespace dialplate::sample

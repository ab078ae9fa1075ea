// A running page from a few lines of JSON: 240 x 320 pixels, with our faces and a handful of values.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "sim/prototype/prototype.hpp"

#include <gtest/gtest.h>

#include <memory>
#include <string>

namespace dialplate {

constexpr std::uint16_t black = 0x0000, white = 0xFFFF, red = 0xF800, green = 0x07E0, blue = 0x001F;

/// @param items   JSON of the items of page "main".
/// @param values  JSON members of `values`, in front of those that are always there.
struct TestPage {
    Layout layout;
    BuiltImage image;
    std::unique_ptr<Prototype> prototype;

    explicit TestPage(const std::string& items, const std::string& more_pages = "") {
        const std::string text = R"({
  "title": "test", "display": "2.8in-ILI9341", "turn": 0, "mcu": {"part": "ATmega328P", "clock_mhz": 16},
  "bus": {"kind": "spi", "clock_mhz": 8},
  "touch": {"hold_ms": 600, "repeat_after_ms": 400, "repeat_every_ms": 100},
  "paints": {"black": "#000000", "white": "#FFFFFF", "red": "#FF0000", "green": "#00FF00", "blue": "#0000FF"},
  "looks": {"key": {"idle": {"ink": "white", "fill": "black", "edge": "white"},
                    "pressed": {"ink": "black", "fill": "white", "edge": "white"},
                    "active": {"ink": "white", "fill": "blue", "edge": "white"},
                    "disabled": {"ink": "red", "fill": "black", "edge": "red"}}},
  "faces": {"legend": {"file": "legend9.bdf", "size": 9}, "figures": {"file": "figures16.bdf", "size": 16},
            "lit": {"segments": {"width": 20, "height": 40, "stroke": 5, "gap": 4}}},
  "values": {"number": {"type": "number", "min": -99999999, "max": 99999999, "start": 0},
             "count": {"type": "number", "min": 0, "max": 99999999, "start": 0},
             "step": {"type": "choice", "choices": [{"text": "1", "number": 1}, {"text": "10", "number": 10}, {"text": "1k", "number": 1000}]},
             "level": {"type": "level", "min": -127, "max": 127, "start": -127},
             "flag": {"type": "flag", "start": true}},
  "pages": [{"name": "main", "ground": "black", "items": [)" +
                                 items + R"(]})" + more_pages + R"(]})";
        const Reading reading = read_layout(text, "test.json", DIALPLATE_TREE "/layouts");
        for (const Finding& f : reading.findings)
            ADD_FAILURE() << gnu_line("test.json", f);
        if (!reading.layout) return;
        layout = *reading.layout;
        const Building building = build_image(layout);
        for (const Finding& f : building.findings)
            ADD_FAILURE() << gnu_line("test.json", f);
        if (!building.image) return;
        image = *building.image;
        prototype = std::make_unique<Prototype>(layout, image);
        prototype->settle();
    }

    [[nodiscard]] ValueId value(const std::string& name) const {
        for (std::size_t i = 0; i < layout.values.size(); ++i) {
            if (layout.values[i].name == name) return static_cast<ValueId>(i);
        }
        ADD_FAILURE() << "no value " << name;
        return 0;
    }
    void set(const std::string& name, std::int32_t to) {
        prototype->set(value(name), to);
        prototype->settle();
    }
    [[nodiscard]] std::uint16_t at(int x, int y) const {
        return prototype->glass()[static_cast<std::size_t>(y * layout.glass_width() + x)];
    }
    /// A part of the glass as rows of '#' (this ink) and '.'.
    [[nodiscard]] std::string drawing(const Box& box, std::uint16_t ink) const {
        const std::vector<std::uint16_t> glass = prototype->glass();
        std::string rows;
        for (int y = box.y; y < box.bottom(); ++y) {
            for (int x = box.x; x < box.right(); ++x) {
                rows += glass[static_cast<std::size_t>(y * layout.glass_width() + x)] == ink ? '#'
                                                                                             : '.';
            }
            rows += '\n';
        }
        return rows;
    }
};

}  // namespace dialplate

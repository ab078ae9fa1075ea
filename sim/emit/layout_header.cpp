#include "sim/emit/pieces.hpp"
#include "sim/emit/text.hpp"

namespace dialplate {
namespace {

constexpr std::string_view header_text =
    R"(// "@title@" for a sketch: its image, its values, choices, keys and pages.
// Written by dialplate; a change is lost when it emits again.
//
// Five calls matter.
//
//     uint8_t memory[layout::memory_bytes];
//     layout::Screen<@bus@> screen(@bus@{}, layout::image(), memory);
//         Makes the screen. Its first page is drawn as soon as `service` is called.
//
//     screen.set(@value@, @number@);
//         Tells it a value, whenever one has changed. Costs little; nothing is drawn yet.
//
//     screen.touch(dialplate::Point{x, y});    screen.lift();
//         Where the finger is, in pixels from the top left of the glass, for every sample of the touch
//         sheet; and that it is gone.
//
//     screen.service(millis());
//         Draws a slice, some thousand pixels or one large glyph. Call it in every turn of loop().
//
//     dialplate::Event event;
//     while (screen.next_event(event)) { ... }
//         What a finger did to a key: event.key is one of layout::key, event.what says press, hold, repeat,
//         release or slide_off. Pages that a key turns to are turned already.
//
// All of them belong in loop(), none in an interrupt.
#pragma once

#include "src/dialplate/context_core.hpp"
#include "src/dialplate/flash_bytes.hpp"
#include "src/dialplate/runs_core.hpp"
#include "src/dialplate/screen.hpp"

#include <stdint.h>

namespace layout {

/// The glass as the reader sees it, in pixels.
constexpr uint16_t width = @width@, height = @height@;

/// RAM for the values and for what the glass shows: the size of the array that the screen is given.
constexpr uint16_t memory_bytes = @memory@;

constexpr uint16_t image_size = @size@;
extern const uint8_t image_bytes[image_size];

/// The parts of the engine that this layout uses; the compiler leaves out the others.
struct Parts {
    using Bytes = dialplate::FlashBytes<image_bytes>;
@parts@    /// What decides the pixels of the packing `context`, and columns of its widest glyph.
    using Contexts = dialplate::FastContextCore;
    static constexpr uint8_t context_columns = @context_columns@;
    /// What reads the packing `runs` where a digit becomes another by what differs.
    using Runs = dialplate::FastRunsCore;
};

using Image = dialplate::Rom<Parts::Bytes>;
inline Image image() {
    return Image(Parts::Bytes{});
}

/// Bus: a type with the two functions of src/dialplate/bus.hpp.
template <class Bus>
using Screen = dialplate::Screen<Bus, Parts>;
@names@
}  // namespace layout
)";

std::string parts_text(PartSet parts) {
    std::string lines;
    for (int i = 0; i < part_count; ++i) {
        const auto part = static_cast<Part>(i);
        lines += std::string("    static constexpr bool ") + name_of(part) + " = " +
                 (parts.has(part) ? "true" : "false") + ";\n";
    }
    return lines;
}

std::string range_of(const Value& value) {
    const std::string unit = value.unit.empty() ? "" : ' ' + in_comment(value.unit);
    switch (value.type) {
        case ValueType::number:
        case ValueType::level:
            return std::to_string(value.min) + " to " + std::to_string(value.max) + unit;
        case ValueType::choice:
            return "one of its choices, below";
        case ValueType::flag:
            break;
    }
    return "0 or 1";
}

struct Name {
    std::string name, remark;
};

std::string enumeration(const std::string& type, const std::vector<Name>& names) {
    std::string lines = "enum : " + type + " {\n";
    for (std::size_t i = 0; i < names.size(); ++i) {
        lines += "    " + names[i].name + " = " + std::to_string(i) + ",";
        if (!names[i].remark.empty()) lines += "  ///< " + in_comment(names[i].remark);
        lines += '\n';
    }
    return lines + "};\n";
}

std::string scope(const std::string& name, const std::string& remark, const std::string& inside) {
    return inside.empty() ? ""
                          : "\n/// " + remark + "\nnamespace " + name + " {\n" + inside +
                                "}  // namespace " + name + "\n";
}

std::string all_names(const Emitting& it) {
    std::vector<Name> values, pages, palettes, keys;
    std::string choices;
    for (std::size_t v = 0; v < it.layout.values.size(); ++v) {
        const Value& value = it.layout.values[v];
        values.push_back({it.names.values[v], range_of(value)});
        std::vector<Name> its;
        for (std::size_t c = 0; c < value.choices.size(); ++c) {
            its.push_back({it.names.choices[v][c], value.choices[c].text});
        }
        if (!its.empty()) {
            choices += "// Of " + it.names.values[v] + ".\n" + enumeration("uint8_t", its);
        }
    }
    const std::vector<const Key*> key_items = keys_by_number(it.layout, it.built);
    for (std::size_t k = 0; k < it.names.keys.size(); ++k) {
        keys.push_back({it.names.keys[k], key_items[k]->text});
    }
    for (std::size_t p = 0; p < it.names.pages.size(); ++p) {
        pages.push_back({it.names.pages[p], it.layout.pages[p].name});
    }
    for (std::size_t p = 0; p < it.names.palettes.size(); ++p) {
        palettes.push_back({it.names.palettes[p], it.layout.palettes[p]});
    }
    std::string out =
        "\n// Enumerations without a type, so that each is a number where one is asked for.\n";
    const auto listed = [](const std::string& type, const std::vector<Name>& names) {
        return names.empty() ? std::string{} : enumeration(type, names);
    };
    out += scope("value", "For screen.set() and screen.get().", listed("uint8_t", values));
    out += scope("choice", "What a value that is a choice is set to.", choices);
    out += scope("key", "In an event.", listed("uint16_t", keys));
    out += scope("page", "For screen.show_page() and screen.page().", listed("uint8_t", pages));
    if (palettes.size() > 1) {
        out += scope("palette", "For screen.use_palette().", listed("uint8_t", palettes));
    }
    return out;
}

/// A value as an example of one: a number if there is one.
Fields example_of(const Emitting& it) {
    for (std::size_t v = 0; v < it.layout.values.size(); ++v) {
        const Value& value = it.layout.values[v];
        if (value.type == ValueType::number || value.type == ValueType::level) {
            return {{"value", "layout::value::" + it.names.values[v]},
                    {"number", std::to_string(value.start)}};
        }
    }
    if (it.names.values.empty()) return {{"value", "value"}, {"number", "number"}};
    return {{"value", "layout::value::" + it.names.values.front()},
            {"number", std::to_string(it.layout.values.front().start)}};
}

}  // namespace

std::string layout_header(const Emitting& it) {
    Fields fields = example_of(it);
    fields["title"] = in_comment(it.layout.title);
    fields["bus"] = it.own_driver() ? "OwnBus" : "wiring::Bus";
    fields["width"] = std::to_string(it.layout.glass_width());
    fields["height"] = std::to_string(it.layout.glass_height());
    fields["memory"] = std::to_string(it.memory_bytes);
    fields["size"] = std::to_string(it.built.bytes.size());
    fields["parts"] = parts_text(it.parts);
    fields["context_columns"] = std::to_string(it.built.context_columns());
    fields["names"] = all_names(it);
    return filled(header_text, fields);
}

}  // namespace dialplate

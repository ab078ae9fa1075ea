#include "tests/prove/small_layout.hpp"

#include "sim/layout/reader.hpp"

#include <gtest/gtest.h>

#include <stdexcept>

namespace dialplate {
namespace {

constexpr const char* small_layout = R"({
  "title": "Small",
  "display": {
    "name": "small", "controller": "ST7735S", "width": 64, "height": 48,
    "active_width_mm": 16, "active_height_mm": 12, "memory_width": 132, "memory_height": 162,
    "turns": {
      "0": {"address_mode": 0}, "90": {"address_mode": 96},
      "180": {"address_mode": 192}, "270": {"address_mode": 160}
    }
  },
  "mcu": {"part": {"name": "ATmega328P", "family": "avr", "flash": 32768, "ram": 2048, "boot": 512,
                   "clock_max_mhz": 20}, "clock_mhz": 16},
  "bus": {"kind": "@bus@", "clock_mhz": 8},
  "paints": {"ground": "#000000", "ink": "#FFFFFF"},
  "looks": {"plain": {"idle": {"ink": "ink", "fill": "ground", "edge": "ink"},
                      "pressed": {"ink": "ground", "fill": "ink", "edge": "ink"},
                      "active": {"ink": "ink", "fill": "ground", "edge": "ink"},
                      "disabled": {"ink": "ink", "fill": "ground", "edge": "ground"}}},
  "faces": {"lit": {"segments": {"width": 5, "height": 9, "stroke": 1, "gap": 1}}},
  "values": {
    "frequency": {"type": "number", "unit": "kHz", "min": 0, "max": 99999, "start": 7100, "role": "frequency"},
    "signal": {"type": "level", "min": 0, "max": 100, "start": 30}
  },
  "pages": [
    {"name": "main", "ground": "ground", "items": [
      {"kind": "readout", "name": "dial", "at": [2, 2], "size": [40, 10], "value": "frequency", "face": "lit",
       "ink": "ink", "ground": "ground", "groups": [5]},
      {"kind": "meter", "name": "bar", "at": [2, 16], "size": [60, 6], "value": "signal", "from": 0, "to": 100,
       "bar": 4, "ink": "ink", "ground": "ground", "unlit": "ground"},
      {"kind": "key", "name": "more", "at": [2, 26], "size": [28, 18], "text": "1", "face": "lit",
       "look": "plain", "edge": 1, "tap": {"page": "other"}},
      {"kind": "key", "name": "up", "at": [34, 26], "size": [28, 18], "text": "2", "face": "lit",
       "look": "plain", "edge": 1, "repeat": true, "tap": {"step": "frequency", "by": 1}}
    ]},
    {"name": "other", "ground": "ink", "items": [
      {"kind": "key", "name": "back", "at": [2, 2], "size": [28, 18], "text": "0", "face": "lit",
       "look": "plain", "edge": 1, "tap": {"page": "main"}}
    ]}
  ]
})";

}  // namespace

void replace_one(std::string& text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    if (at == std::string::npos) throw std::runtime_error("nothing like " + from);
    if (text.find(from, at + 1) != std::string::npos) {
        throw std::runtime_error("more than one " + from);
    }
    text.replace(at, from.size(), to);
}

std::string small_document(const std::string& bus,
                           const std::vector<std::pair<std::string, std::string>>& edits) {
    std::string text = small_layout;
    replace_one(text, "@bus@", bus);
    for (const auto& [from, to] : edits)
        replace_one(text, from, to);
    return text;
}

Ready small(const std::string& bus, const std::vector<std::pair<std::string, std::string>>& edits) {
    const Reading reading =
        read_layout(small_document(bus, edits), "small.json", DIALPLATE_TREE "/layouts");
    for (const Finding& f : reading.findings)
        ADD_FAILURE() << gnu_line("small.json", f);
    if (!reading.layout) return {};
    const Building building = build_image(*reading.layout);
    for (const Finding& f : building.findings)
        ADD_FAILURE() << gnu_line("small.json", f);
    if (!building.image) return {};
    return {*reading.layout, *building.image};
}

const Toolchain& toolchain() {
    static const std::optional<Toolchain> found = find_toolchain();
    if (!found) throw std::runtime_error("avr-g++ and avr-libc are needed");
    return *found;
}

ProofOptions short_scenario() {
    return {.scenario = {.tuning_steps = 80, .meter_steps = 8, .random_steps = 60, .seed = 1},
            .play = std::nullopt,
            .two_boards = false};
}

ProofOptions unweighed() {
    ProofOptions options = short_scenario();
    options.weigh = false;
    return options;
}

}  // namespace dialplate

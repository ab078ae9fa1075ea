// Layouts far larger than any receiver needs, as JSON text, to see that work grows linearly.
#pragma once

#include <string>

namespace dialplate {

struct LayoutSize {
    int items = 0;  ///< Spread over pages of up to 600.
    int faces = 1;  ///< 1..200; every one is used when there are as many items.
};

/// Lamps, legends and readouts in a grid of 16 x 16 pixels on a 480 x 320 glass, each drawn in the next
/// of the faces: enlarged legend faces and segment digits by turns.
inline std::string large_layout(LayoutSize size) {
    constexpr int across = 30;
    constexpr int down = 20;
    const auto number = [](int n) { return std::to_string(n); };
    std::string text = R"({"title": "Large", "display": "3.5in-ILI9488", "turn": 90,
"mcu": {"part": "ATmega2560", "clock_mhz": 16}, "bus": {"kind": "parallel8", "clock_mhz": 5},
"paints": {"ground": "#101418", "ink": "#F2EFE6", "amber": "#FFB84D"},
"faces": {)";
    for (int face = 0; face < size.faces; ++face) {
        text += face == 0 ? "" : ",";
        text += "\n\"face " + number(face) + "\": ";
        text += face % 4 == 3
                    ? R"({"segments": {"width": )" + number(5 + face % 3) + R"(, "height": )" +
                          number(9 + face % 5) + R"(, "stroke": 1, "gap": 1}})"
                    : R"({"file": "legend9.bdf", "size": 9, "packing": ")" +
                          std::string{face % 2 == 0 ? "plain" : "runs"} + "\"}";
    }
    text += R"(},
"values": {
"frequency": {"type": "number", "unit": "Hz", "min": 0, "max": 29999990, "start": 7100000, "role": "frequency"},
"channel": {"type": "number", "min": 0, "max": 9, "start": 1},
"lock": {"type": "flag", "start": false}},
"pages": [)";
    for (int item = 0; item < size.items; ++item) {
        const int place = item % (across * down);
        if (place == 0) {
            text += item == 0 ? "" : "]},";
            text += "\n{\"name\": \"page " + number(item / (across * down)) +
                    "\", \"ground\": \"ground\", \"items\": [";
        } else {
            text += ",";
        }
        const int face = item % size.faces;
        const std::string where = "\"at\": [" + number(16 * (place % across)) + ", " +
                                  number(16 * (place / across)) + "], \"size\": [16, 16], ";
        const std::string in = "\"face\": \"face " + number(face) + "\", ";
        text += "\n";
        if (face % 4 == 3) {
            text += R"({"kind": "readout", )" + where + in +
                    R"("value": "channel", "ink": "ink", "ground": "ground", "groups": [1]})";
        } else if (item % 2 == 0) {
            text += R"({"kind": "legend", )" + where + in + "\"text\": \"" +
                    std::string(1, static_cast<char>('A' + item % 26)) +
                    R"(", "ink": "ink", "ground": "ground"})";
        } else {
            text += R"({"kind": "lamp", )" + where + in +
                    R"("value": "lock", "when": true, "text": "L", )"
                    R"("lit": {"ink": "ground", "fill": "amber", "edge": "amber"}, )"
                    R"("unlit": {"ink": "ink", "fill": "ground", "edge": "ink"}, "edge": 1})";
        }
    }
    return text + "]}]}\n";
}

}  // namespace dialplate

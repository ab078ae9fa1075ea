// How long one digit of a readout takes to become another: all 90 pairs, on a simulated ATmega328P at 16 MHz with
// the timed SPI at 8 MHz. A readout of one cell, so that little else is in the time.
//
//     digit_times TREE [FONT SIZE]...      SIZE: 48, or 16x3 for one enlarged
//     digit_times TREE segments '{"width": 24, "height": 48, "stroke": 6, "gap": 4}'
#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"
#include "tests/firmware/timed_run.hpp"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {
namespace {

struct Row {
    std::string name;
    std::string face;     ///< Members of the face.
    std::string readout;  ///< More members of the readout.
};

/// A way from 0 through all 90 pairs, each once: from every digit to those above the next and back, then to the
/// next; at last down again.
std::vector<std::int32_t> every_pair() {
    std::vector<std::int32_t> numbers;
    for (int a = 0; a < 9; ++a) {
        for (int b = a + 2; b < 10; ++b)
            numbers.insert(numbers.end(), {b, a});
        numbers.push_back(a + 1);
    }
    for (int a = 8; a >= 0; --a)
        numbers.push_back(a);
    return numbers;
}

std::string layout_with(const Row& row) {
    return R"({"title": "digit", "display": "2.8in-ILI9341", "turn": 0, "mcu": {"part": "ATmega328P", "clock_mhz": 16},
 "bus": {"kind": "spi_timed", "clock_mhz": 8}, "paints": {"dark": "#101418", "light": "#FFE0A0"},
 "faces": {"figures": {)" +
           row.face + R"(}},
 "values": {"number": {"type": "number", "min": 0, "max": 9, "start": 0}},
 "pages": [{"name": "main", "ground": "dark", "items": [{"kind": "readout", "at": [20, 20], "size": [200, 150],
 "face": "figures", "ink": "light", "ground": "dark", "value": "number", "groups": [1])" +
           row.readout + "}]}]}";
}

void time_row(const Row& row, const std::string& tree) {
    const Reading reading = read_layout(layout_with(row), "digit.json", tree + "/layouts");
    for (const Finding& finding : reading.findings) {
        std::fprintf(stderr, "%s\n", gnu_line(row.name, finding).c_str());
    }
    if (!reading.layout) return;
    const Building building = build_image(*reading.layout);
    if (!building.image) return;
    const FaceCost& cost = building.image->faces.front();
    const TimedRun run = timed_numbers(*reading.layout,
                                       *building.image,
                                       {"spi_timed", "timed", BusKind::spi_timed, 2},
                                       0,
                                       every_pair(),
                                       tree);
    if (!run.trouble.empty()) {
        std::fprintf(stderr, "%s: %s\n", row.name.c_str(), run.trouble.c_str());
        return;
    }
    std::vector<double> cycles;
    for (const TimedUpdate& update : run.updates) {
        double sum = 0;
        for (const TimedService& service : update.services)
            sum += service.cycles;
        cycles.push_back(sum);
    }
    std::sort(cycles.begin(), cycles.end());
    const std::size_t half = cycles.size() / 2;
    const double median = (cycles[half - 1] + cycles[half]) / 2;
    const int pixels = cost.digit_advance * cost.height;
    if (!row.readout.empty() && !cost.changed_runs) return;  // as before
    std::printf(
        "%-36s %-8s %-7s %2dx%-3d %5d px %5lld B  %3zu pairs  median %6.0f  worst %6.0f  best "
        "%6.0f  "
        "bus limit %d\n",
        row.name.c_str(),
        cost.packing.c_str(),
        cost.changed_runs ? "changes" : "whole",
        cost.digit_advance,
        cost.height,
        pixels,
        static_cast<long long>(cost.bytes.value),
        cycles.size(),
        median,
        cycles.back(),
        cycles.front(),
        32 * pixels);
    std::fflush(stdout);
}

}  // namespace
}  // namespace dialplate

int main(int count, char** words) {
    using namespace dialplate;
    if (count < 4 || count % 2 != 0) {
        std::fputs("usage: digit_times TREE FONT SIZE ...\n", stderr);
        return 2;
    }
    const std::string tree = words[1];
    std::vector<Row> rows;
    for (int i = 2; i + 1 < count; i += 2) {
        const std::string font = words[i], size = words[i + 1];
        const std::string name = std::filesystem::path(font).filename().string() + ' ' + size;
        if (font == "segments") {
            rows.push_back({name, "\"segments\": " + size, ""});
            continue;
        }
        const std::size_t by = size.find('x');
        const std::string scale = by == std::string::npos ? "1" : size.substr(by + 1);
        for (const char* packing : {"plain", "runs", "context"}) {
            rows.push_back({name,
                            "\"file\": \"" + font + "\", \"size\": " + size.substr(0, by) +
                                ", \"scale\": " + scale + ", \"packing\": \"" + packing + '"',
                            ""});
        }
    }
    for (Row& row : rows) {
        time_row(row, tree);
        // Sooner than any digit can be drawn whole: by what differs, where that is faster.
        row.readout = R"(, "within_ms": 0.1)";
        time_row(row, tree);
    }
}

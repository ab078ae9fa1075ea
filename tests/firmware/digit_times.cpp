// How long one digit of a readout takes to become another: all 90 pairs, on a simulated ATmega328P at 16 MHz with
// the timed SPI at 8 MHz.
//
//     digit_times TREE [FONT SIZE]...      SIZE: 48, or 16x3 for one enlarged
//     digit_times TREE segments '{"width": 24, "height": 48, "stroke": 6, "gap": 4}'
#include "tests/firmware/digit_pairs.hpp"

#include <cstdio>
#include <filesystem>
#include <string>
#include <vector>

namespace dialplate {
namespace {

struct Row {
    std::string name;
    OneDigit digit;
};

void time_row(const Row& row, const std::string& tree) {
    const DigitPairs pairs = time_digit_pairs(row.digit, tree);
    if (!pairs.trouble.empty())
        std::fprintf(stderr, "%s: %s\n", row.name.c_str(), pairs.trouble.c_str());
    if (pairs.cycles.empty()) return;
    if (!row.digit.readout.empty() && !pairs.by_what_differs) return;  // as before
    const int pixels = pairs.columns * pairs.rows;
    std::printf(
        "%-36s %-8s %-7s %2dx%-3d %5d px %5lld B  %3zu pairs  median %6.0f  worst %6.0f  best "
        "%6.0f  "
        "bus limit %d\n",
        row.name.c_str(),
        pairs.packing.c_str(),
        pairs.by_what_differs ? "changes" : "whole",
        pairs.columns,
        pairs.rows,
        pixels,
        pairs.bytes,
        pairs.cycles.size(),
        pairs.median(),
        pairs.cycles.back(),
        pairs.cycles.front(),
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
            rows.push_back({name, {"\"segments\": " + size}});
            continue;
        }
        const std::size_t by = size.find('x');
        const std::string scale = by == std::string::npos ? "1" : size.substr(by + 1);
        for (const char* packing : {"plain", "runs", "context"}) {
            rows.push_back({name,
                            {"\"file\": \"" + font + "\", \"size\": " + size.substr(0, by) +
                             ", \"scale\": " + scale + ", \"packing\": \"" + packing + '"'}});
        }
    }
    for (Row& row : rows) {
        time_row(row, tree);
        // Sooner than any digit can be drawn whole: by what differs, where that is faster.
        row.digit.readout = R"(, "within_ms": 0.1)";
        time_row(row, tree);
    }
}

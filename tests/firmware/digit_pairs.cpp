#include "tests/firmware/digit_pairs.hpp"

#include "sim/image/build.hpp"
#include "sim/layout/reader.hpp"

#include <algorithm>

namespace dialplate {
namespace {

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

std::string layout_with(const OneDigit& digit) {
    return R"({"title": "digit", "display": "2.8in-ILI9341", "turn": 0, "mcu": {"part": "ATmega328P", "clock_mhz": 16},
 "bus": {"kind": ")" +
           std::string{digit.driver.name} +
           R"(", "clock_mhz": 8}, "paints": {"dark": "#101418", "light": "#FFE0A0"},
 "faces": {"figures": {)" +
           digit.face + R"(}},
 "values": {"number": {"type": "number", "min": 0, "max": 9, "start": 0}},
 "pages": [{"name": "main", "ground": "dark", "items": [{"kind": "readout", "at": [20, 20], "size": [200, 150],
 "face": "figures", "ink": "light", "ground": "dark", "value": "number", "groups": [1])" +
           digit.readout + "}]}]}";
}

}  // namespace

double DigitPairs::median() const {
    const std::size_t half = cycles.size() / 2;
    return cycles.empty() ? 0.0 : (cycles[half - 1] + cycles[half]) / 2;
}

DigitPairs time_digit_pairs(const OneDigit& digit, const std::filesystem::path& tree) {
    DigitPairs pairs;
    const Reading reading =
        read_layout(layout_with(digit), "digit.json", (tree / "layouts").string());
    for (const Finding& finding : reading.findings)
        pairs.trouble += gnu_line("digit", finding) + '\n';
    if (!reading.layout) return pairs;
    const Building building = build_image(*reading.layout);
    if (!building.image) {
        pairs.trouble += "no image\n";
        return pairs;
    }
    const FaceCost& cost = building.image->faces.front();
    pairs.packing = cost.packing;
    pairs.by_what_differs = cost.changed_runs;
    pairs.columns = cost.digit_advance;
    pairs.rows = cost.height;
    pairs.bytes = cost.bytes.value;
    const TimedRun run =
        timed_numbers(*reading.layout, *building.image, digit.driver, 0, every_pair(), tree);
    pairs.trouble += run.trouble;
    if (!run.trouble.empty()) return pairs;
    for (const TimedUpdate& update : run.updates) {
        double sum = 0;
        for (const TimedService& service : update.services)
            sum += service.cycles;
        pairs.cycles.push_back(sum);
    }
    std::sort(pairs.cycles.begin(), pairs.cycles.end());
    return pairs;
}

}  // namespace dialplate

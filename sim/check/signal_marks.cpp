// signal-marks: what is written on a signal meter is where the recommendation puts it.
#include "sim/check/dial.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"
#include "sim/receiver/s_meter.hpp"

#include <cmath>
#include <optional>
#include <string_view>

namespace dialplate::rule {

namespace {

constexpr RuleSource signal_marks_sources[] = {
    {"IARU Region 1 Technical Recommendation R.1: S9 is -73 dBm below 30 MHz, -93 dBm above, 6 dB "
     "an S unit "
     "(RX-01 to RX-03)",
     Trust::second_hand},
};

std::optional<int> whole(std::string_view digits) {
    if (digits.empty() || digits.size() > 2) return std::nullopt;
    int value = 0;
    for (const char c : digits) {
        if (c < '0' || c > '9') return std::nullopt;
        value = 10 * value + (c - '0');
    }
    return value;
}

/// What a mark's words claim: "S5", "5", "9+20", "S9+20", "+20", "20". None if they claim nothing known.
std::optional<SReading> reading_of(std::string_view words) {
    if (words.ends_with("dB")) words.remove_suffix(2);
    while (words.ends_with(' '))
        words.remove_suffix(1);
    if (words.starts_with('S') || words.starts_with('s')) words.remove_prefix(1);
    if (words.starts_with("9+")) words.remove_prefix(1);
    const bool over = words.starts_with('+');
    if (over) words.remove_prefix(1);
    const std::optional<int> figure = whole(words);
    if (!figure) return std::nullopt;
    if (over || *figure >= 10)
        return SReading{.units = 9.0, .over_db = static_cast<double>(*figure)};
    return SReading{.units = static_cast<double>(*figure)};
}

void find_signal_marks(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Value* const dial = value_with(layout, Role::frequency);
    const auto unit = hertz_a_unit(layout);
    const double highest =
        dial != nullptr && unit ? static_cast<double>(dial->max) * static_cast<double>(*unit) : 0.0;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::meter) continue;
            const Value& value = layout.values.at(static_cast<std::size_t>(item.meter.value));
            if (value.role != Role::signal || value.unit != "dBm") continue;
            for (const MeterMark& mark : item.meter.marks) {
                const auto reading = reading_of(mark.text);
                if (!reading) continue;
                // A receiver of both ranges may keep to either.
                const double right = power_of(*reading, Hertz{0.0}).value;
                const double above = power_of(*reading, Hertz{highest}).value;
                if (mark.at == std::lround(right) || mark.at == std::lround(above)) continue;
                add_finding(found,
                            Severity::should,
                            mark.pointer.empty() ? item.pointer : mark.pointer,
                            {static_cast<double>(mark.at), right, "dBm"},
                            called(item) + ": mark \"" + mark.text + "\" stands at " +
                                std::to_string(mark.at) + " dBm, it means " + number(right) +
                                " dBm");
                if (!mark.pointer.empty())
                    found.back().cure = {{.kind = dialplate::Change::Kind::replace,
                                          .pointer = mark.pointer + "/at",
                                          .value = number(right)}};
            }
        }
    }
}

}  // namespace

const Rule signal_marks{
    .name = "signal-marks",
    .sentence = "Marks of a signal meter in dBm stand where their S units are.",
    .computed =
        "Power at which a mark of a meter stands whose value has the role signal and the unit dBm, "
        "against the power "
        "that its words mean: S units (\"S5\", \"5\") and decibels over S9 (\"+20\", \"9+20\", "
        "\"20\"). Other words "
        "are not judged.",
    .formula = "S9 = -73 dBm, or -93 dBm above 30 MHz; S n = S9 - 6 dB * (9 - n); +x = S9 + x",
    .sources = signal_marks_sources,
    .figures = {},
    .find = find_signal_marks,
};

}  // namespace dialplate::rule

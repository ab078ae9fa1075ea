// sideband: an amateur band comes up in the sideband that is custom there.
#include "sim/check/dial.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"
#include "sim/receiver/bands.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource sideband_sources[] = {
    {"custom; national society plan 2019, IARU Region 1 plan 2020: LSB below 10 MHz, USB above and "
     "in 60 m (RX-10)",
     Trust::read},
};

Region region_of(const Layout& layout) {
    return layout.region == 2 ? Region::two : layout.region == 3 ? Region::three : Region::one;
}

/// Whether the layout's mode can be set to these words.
bool has_mode(const Layout& layout, const char* words) {
    const Value* const mode = value_with(layout, Role::mode);
    return mode != nullptr &&
           std::any_of(mode->choices.begin(), mode->choices.end(), [&](const Choice& choice) {
               return choice.text == words;
           });
}

void find_sideband(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Value* const bands = value_with(layout, Role::band);
    const auto unit = hertz_a_unit(layout);
    if (bands == nullptr || !unit) return;
    for (const Choice& choice : bands->choices) {
        if (!choice.mode || !choice.number || (*choice.mode != "LSB" && *choice.mode != "USB"))
            continue;
        const std::int64_t hertz = *choice.number * *unit;
        if (hertz < 0 || hertz > INT32_MAX) continue;
        const auto at = static_cast<std::int32_t>(hertz);
        if (amateur_band_at(at, region_of(layout)) == nullptr)
            continue;  // ships have customs of their own
        const char* const usual = usual_sideband(at) == Sideband::lower ? "LSB" : "USB";
        if (*choice.mode == usual) continue;
        add_finding(found,
                    Severity::note,
                    choice.pointer + "/mode",
                    "band \"" + choice.text + "\" comes up in " + *choice.mode + ", custom at " +
                        number(static_cast<double>(hertz) / 1e6, 3) + " MHz is " + usual);
        if (has_mode(layout, usual))
            found.back().cure = {{.kind = Change::Kind::replace,
                                  .pointer = choice.pointer + "/mode",
                                  .value = std::string("\"") + usual + "\""}};
    }
}

}  // namespace

const Rule sideband{
    .name = "sideband",
    .sentence = "Amateur bands come up in LSB below 10 MHz, in USB above and in 60 m (note).",
    .computed =
        "Mode LSB or USB of every choice of the value with the role band that begins in an amateur "
        "band of the "
        "layout's Region.",
    .formula = "LSB below 10 MHz but in 60 m, else USB",
    .sources = sideband_sources,
    .figures = {},
    .find = find_sideband,
};

}  // namespace dialplate::rule

// flashing: nothing on the glass flashes so fast and so large that it can hurt somebody.
//
// Modelled: lamps that are lit at a state and keys that are active at one, of values that change often.
// Everything of a value on a page flashes at once; the field of 10 degrees is taken to hold the whole glass.
#include "sim/check/page_colours.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/two_states.hpp"
#include "sim/check/wording.hpp"
#include "sim/colour/colour_space.hpp"
#include "sim/layout/colour.hpp"

#include <algorithm>
#include <map>

namespace dialplate::rule {

namespace {

constexpr RuleSource sources[] = {
    {"WCAG 2.2 SC 2.3.1: three flashes a second, general and red; area (SAF-09 to SAF-11)",
     Trust::read},
    {"WCAG 2.2, note on red flash; ISO 9241-391 (SAF-12)", Trust::read},
};

constexpr RuleFigure figures[] = {
    {"most_per_second",
     "a second",
     "flashes in any one second; a flash is a pair of changes",
     3.0,
     0.1,
     100.0},
    {"most_area_sr", "sr", "solid angle of all that flashes at once", 0.006, 0.0001, 1.0},
};

constexpr double least_change = 0.1;         // of relative luminance, SAF-10
constexpr double bright_enough = 0.8;        // the darker state at or above it: no flash, SAF-10
constexpr double saturated_red = 0.8;        // R / (R + G + B), SAF-12
constexpr double least_colour_change = 0.2;  // in u'v', SAF-12
constexpr double slack = 1e-9;

bool is_red(const LinearRgb& light) {
    const double sum = light.red + light.green + light.blue;
    return sum > 0.0 && light.red / sum >= saturated_red - slack;
}

enum class Flash { none, general, red };

Flash flash_between(std::uint16_t one, std::uint16_t other) {
    const LinearRgb a = light_of(expand_rgb565(one)), b = light_of(expand_rgb565(other));
    if ((is_red(a) || is_red(b)) && apart(chromaticity(a), chromaticity(b)) > least_colour_change)
        return Flash::red;
    const double la = relative_luminance(a), lb = relative_luminance(b);
    const bool general =
        std::abs(la - lb) >= least_change - slack && std::min(la, lb) < bright_enough;
    return general ? Flash::general : Flash::none;
}

/// The worst that a change of state can be, over all palettes.
Flash flash_of(const Layout& layout, const TwoStates& states) {
    Flash worst = Flash::none;
    const std::size_t palettes = std::max<std::size_t>(1, layout.palettes.size());
    for (std::size_t palette = 0; palette < palettes; ++palette) {
        const auto between = [&](PaintId a, PaintId b) {
            return flash_between(colour_in(layout, a, palette), colour_in(layout, b, palette));
        };
        worst = std::max(worst, between(states.on.fill, states.off.fill));
    }
    return worst;
}

std::optional<ValueId> value_of(const Item& item) {
    if (item.kind == ItemKind::lamp && item.lamp.when) return item.lamp.value;
    if (item.kind == ItemKind::key) return item.key.active_value;
    return std::nullopt;
}

/// What flashes at once on a page.
struct Together {
    double area_mm2 = 0;
    const Item* first = nullptr;
    int items = 0;
    Flash flash = Flash::none;
};

void find(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const double most = figure(layout, rule::flashing, "most_per_second");
    const double distance = layout.viewing.distance.value;
    const double most_area = figure(layout, rule::flashing, "most_area_sr") * distance * distance;
    const double pixel = layout.pitch_x().value * layout.pitch_y().value;
    for (const Page& page : layout.pages) {
        std::map<ValueId, Together> flashing;
        for (const Item& item : page.items) {
            const auto states = states_of(item, layout);
            const auto id = value_of(item);
            if (!states || !id) continue;
            const Value& value = layout.values.at(static_cast<std::size_t>(*id));
            if (value.per_second.value_or(0.0) / 2.0 <= most) continue;
            const Flash flash = flash_of(layout, *states);
            if (flash == Flash::none) continue;
            Together& together = flashing[*id];
            if (together.first == nullptr) together.first = &item;
            together.area_mm2 += pixel * item.box.width * item.box.height;
            together.flash = std::max(together.flash, flash);
            ++together.items;
        }
        for (const auto& [id, together] : flashing) {
            if (together.area_mm2 <= most_area + slack) continue;
            const Value& value = layout.values.at(static_cast<std::size_t>(id));
            const double flashes = *value.per_second / 2.0;
            const bool red = together.flash == Flash::red;
            add_finding(
                found,
                Severity::must,
                together.first->pointer,
                {flashes, most, "flashes a second"},
                called(*together.first) +
                    (together.items > 1
                         ? " and " + counted(together.items - 1, "other item", "other items")
                         : std::string()) +
                    " can flash " + number(flashes, 1) + " times a second with value \"" +
                    value.name + "\"" + (red ? ", in saturated red" : "") + ", allowed are " +
                    number(most) + " on " + number(together.area_mm2) + " mm2: up to " +
                    number(2.0 * most) + " changes a second, or up to " + number(most_area) +
                    " mm2 at " + number(distance) + " mm, or states of like lightness are safe",
                red ? sources[1].text : nullptr);
        }
    }
}

}  // namespace

const Rule flashing{
    .name = "flashing",
    .sentence = "What flashes does so three times a second at most, or is small.",
    .computed =
        "Half the changes a second (per_second) of a value that lights lamps or makes keys active, "
        "where fill changes "
        "by 10 % of white or more and the darker state is below 80 %, or where one state is "
        "saturated red; "
        "the area of all that changes with it on a page against 0.006 sr at the viewing distance.",
    .formula = "per_second / 2 <= 3, or area <= 0.006 * distance^2",
    .sources = sources,
    .figures = figures,
    .find = find,
};

}  // namespace dialplate::rule

// tuning-step: a step of the tuning knob is a whole number of the dial's unit, and it shows.
#include "sim/check/dial.hpp"
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <algorithm>
#include <optional>

namespace dialplate::rule {

namespace {

constexpr RuleSource tuning_step_sources[] = {
    {"step arithmetic is exact in whole hertz (RX-14)", Trust::memory},
    {"common practice, no source: what is turned is seen to move", Trust::practice},
};

/// Digits that every readout of the frequency drops; none if nothing shows it.
std::optional<int> dropped(const Layout& layout) {
    std::optional<int> least;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::readout) continue;
            const Readout& readout = item.readout;
            if (layout.values.at(static_cast<std::size_t>(readout.value)).role != Role::frequency)
                continue;
            least = std::min(least.value_or(readout.drop), readout.drop);
        }
    }
    return least;
}

void find_tuning_step(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    const Value* const steps = value_with(layout, Role::step);
    const auto dial_unit = hertz_a_unit(layout);
    if (steps == nullptr || !dial_unit) return;
    const auto step_unit = steps->unit.empty() ? dial_unit : hertz_in(steps->unit);
    if (!step_unit) return;
    std::int64_t last_digit = *dial_unit;  // hertz that the last digit shown stands for
    const std::optional<int> drop = dropped(layout);
    for (int i = 0; i < drop.value_or(0); ++i)
        last_digit *= 10;
    for (const Choice& choice : steps->choices) {
        if (!choice.number) continue;
        const std::int64_t step = *choice.number * *step_unit;
        const std::string called_step =
            "step \"" + choice.text + "\" is " + std::to_string(step) + " Hz, ";
        if (step % *dial_unit != 0) {
            add_finding(
                found,
                Severity::must,
                choice.pointer,
                {static_cast<double>(step), static_cast<double>(*dial_unit), "Hz"},
                called_step + "the frequency is counted in whole " + std::to_string(*dial_unit) +
                    " Hz and cannot hold it: count the frequency in Hz, or take a multiple");
        } else if (drop && step % last_digit != 0) {
            const bool unseen = step < last_digit;
            add_finding(found,
                        unseen ? Severity::should : Severity::note,
                        choice.pointer,
                        {static_cast<double>(step), static_cast<double>(last_digit), "Hz"},
                        called_step + "the last digit that any readout shows is " +
                            std::to_string(last_digit) + " Hz: " +
                            (unseen ? "one step does not show; drop one digit less"
                                    : "steps look uneven; drop one digit less, or take a multiple"),
                        tuning_step_sources[1].text);
        }
    }
}

}  // namespace

const Rule tuning_step{
    .name = "tuning-step",
    .sentence =
        "Every tuning step is a whole number of the dial's unit (must) and shows on a readout "
        "(should).",
    .computed =
        "Every choice of the value with the role step, in hertz, against the unit in which the "
        "frequency is counted, "
        "and against the last digit that the readouts of the frequency show.",
    .formula = "step mod unit = 0; step mod 10^drop * unit = 0",
    .sources = tuning_step_sources,
    .figures = {},
    .find = find_tuning_step,
};

}  // namespace dialplate::rule

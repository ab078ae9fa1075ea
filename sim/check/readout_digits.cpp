// readout-digits: a readout has digits for the greatest value that it can be asked to show.
#include "sim/check/rule_list.hpp"
#include "sim/check/wording.hpp"

#include <cstdlib>
#include <numeric>

namespace dialplate::rule {

namespace {

constexpr RuleSource readout_digits_sources[] = {
    {"arithmetic; 30 MHz in hertz take 8 digits (RX-15, RX-16)", Trust::derived},
};

int digits_of(std::int64_t number) {
    int digits = 1;
    while (number >= 10) {
        number /= 10;
        ++digits;
    }
    return digits;
}

void find_readout_digits(const Subject& subject, std::vector<Finding>& found) {
    const Layout& layout = subject.layout;
    for (const Page& page : layout.pages) {
        for (const Item& item : page.items) {
            if (item.kind != ItemKind::readout) continue;
            const Readout& readout = item.readout;
            const Value& value = layout.values.at(static_cast<std::size_t>(readout.value));
            const std::int64_t greatest =
                std::max(std::abs(std::int64_t{value.min}), std::abs(std::int64_t{value.max}));
            const int needed = std::max(1, digits_of(greatest) - readout.drop);
            const int digits = std::accumulate(readout.groups.begin(), readout.groups.end(), 0);
            if (readout.groups.empty() || digits >= needed) continue;
            add_finding(
                found,
                Severity::must,
                item.pointer,
                {static_cast<double>(digits), static_cast<double>(needed), "digits"},
                called(item) + " shows " + counted(digits, "digit", "digits") + ", value \"" +
                    value.name + "\" reaches " + std::to_string(greatest) +
                    (readout.drop > 0
                         ? ", less " + counted(readout.drop, "dropped digit", "dropped digits")
                         : std::string()) +
                    ": " + std::to_string(needed) + " digits are needed");
        }
    }
}

}  // namespace

const Rule readout_digits{
    .name = "readout-digits",
    .sentence = "A readout has digits for the greatest value.",
    .computed =
        "Digits in the groups of a readout against those of the greatest value that its value can "
        "have, less the "
        "digits that are dropped.",
    .formula = "sum of groups >= digits of max(|min|, |max|) - drop",
    .sources = readout_digits_sources,
    .figures = {},
    .find = find_readout_digits,
};

}  // namespace dialplate::rule

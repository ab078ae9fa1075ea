#include "sim/receiver/read_out.hpp"

#include <cassert>
#include <numeric>

namespace dialplate {

std::int64_t tuned(std::int64_t frequency, std::int64_t step, std::int64_t detents) {
    assert(step > 0);
    if (detents == 0) return frequency;
    std::int64_t below = frequency / step;  // Multiples of the step at or below the frequency.
    if (frequency % step < 0) --below;
    const bool between = frequency % step != 0;
    // Off the grid, the multiple below is already one detent down.
    return (below + detents + (between && detents < 0 ? 1 : 0)) * step;
}

int tuning_place(std::int64_t step) {
    assert(step > 0);
    int place = 0;
    for (; step >= 10; step /= 10)
        ++place;
    return place;
}

std::string read_out(std::int64_t number, const ReadOutForm& form) {
    assert(number >= 0);
    for (int i = 0; i < form.drop; ++i)
        number /= 10;
    const int digits = std::accumulate(form.groups.begin(), form.groups.end(), 0);
    std::string figures(static_cast<std::size_t>(digits), ' ');
    for (int place = 0; place < digits; ++place, number /= 10) {
        if (number == 0 && place >= form.least) break;
        figures[static_cast<std::size_t>(digits - 1 - place)] =
            static_cast<char>('0' + number % 10);
    }
    std::string text;
    std::size_t at = 0;
    for (std::size_t group = 0; group < form.groups.size(); ++group) {
        if (group > 0) {
            const bool nothing_left = figures[at - 1] == ' ';
            text += nothing_left && !form.separator.empty() ? std::string(" ") : form.separator;
        }
        const auto length = static_cast<std::size_t>(form.groups[group]);
        text += figures.substr(at, length);
        at += length;
    }
    return text;
}

}  // namespace dialplate

// What somebody who tries the display is asked to do, made from the layout: its keys, choices and read-outs.
#pragma once

#include "sim/layout/layout.hpp"

#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

namespace dialplate {

/// How a prototype stands.
struct Situation {
    int page = 0;
    std::vector<std::int32_t> values;  ///< One for each of Layout::values.
};

/// One thing to do.
struct Task {
    enum class Kind { set, tune, page };
    Kind kind = Kind::set;
    ValueId value = 0;        ///< set, tune.
    std::int32_t amount = 0;  ///< What the value is to become.
    int page = 0;             ///< page: which is to be shown.
    std::string words;        ///< "Set bandwidth to 2.4 kHz"
};

/// Whether it is done.
[[nodiscard]] bool holds(const Task& task, const Situation& now);

/// The keys of the present page that lead to it: those that act on the value so that it is reached, however many
/// taps that takes; where there is none, those that turn to a page from which it is nearest.
[[nodiscard]] std::vector<const Item*> keys_towards(const Task& task,
                                                    const Layout& layout,
                                                    const Situation& now);

/// Tasks without end: of those that do not hold and can be reached, one that was not given for longest; every third
/// asks for the knob, if there is a frequency. The same seed gives the same tasks to one who does the same.
class Tasks {
public:
    /// @param layout  Must outlive this.
    Tasks(const Layout& layout, std::uint32_t seed);
    /// One that does not hold yet and can be reached; nothing when the layout has none.
    [[nodiscard]] std::optional<Task> next(const Situation& now);

private:
    std::optional<Task> from_pool(const Situation& now);
    std::optional<Task> tuning(const Situation& now);
    [[nodiscard]] int chance(int below);

    const Layout& layout_;
    std::mt19937 chance_;
    std::vector<Task> pool_;  ///< What comes next first.
    std::optional<ValueId> last_;
    int given_ = 0;
};

}  // namespace dialplate

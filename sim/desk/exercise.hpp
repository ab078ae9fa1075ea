// A trial on the bench: tells it of touches and of how the prototype stands, and writes down what it tells.
#pragma once

#include "sim/desk/bench.hpp"

#include <cstdint>

namespace dialplate {

class Exercise {
public:
    explicit Exercise(Bench& bench) : bench_(bench) {}

    /// From the first page on; another seed each time. @pre There is a prototype.
    void start();
    /// The prototype may stand otherwise now. @return Whether the task is another, or the trial over.
    bool look();
    /// It ends here; what was measured stays.
    void leave();
    /// The same for one that runs; one that is over goes away.
    void leave_or_clear();
    /// Another prototype lies on the bench: a running trial ends.
    void interrupt();
    /// Beside the layout, under a name that is free.
    void save();

private:
    void finish();

    Bench& bench_;
    std::uint32_t seed_ = 0;
};

/// How the prototype on the bench stands. @pre There is one.
[[nodiscard]] Situation situation_of(const Bench& bench);

}  // namespace dialplate

// The steps of a play file on both sides of a proof: what `dialplate shot --play` does to a prototype.
#pragma once

#include "sim/layout/layout.hpp"
#include "sim/prototype/play.hpp"
#include "sim/prove/lock_step.hpp"

#include <vector>

namespace dialplate {

/// Touches go in through the simulated converter. Begins on the first page, as a shot does.
/// @pre `both` has been started; the prototype can perform() these steps.
void play_steps(LockStep& both, const Layout& layout, const std::vector<PlayStep>& steps);

}  // namespace dialplate

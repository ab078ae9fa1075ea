// What is done to both sides of a proof, made from the layout: every page, every key, every value, tuning
// through carries, meters swept, and a random mixture of it all.
#pragma once

#include "sim/prove/lock_step.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace dialplate {

struct ScenarioOptions {
    int tuning_steps = 1000;  ///< Around the carries of the frequency, shared out among its pages.
    int meter_steps = 24;     ///< From one end of a level or number to the other, and as many back.
    int random_steps = 300;
    std::uint32_t seed = 1;
};

/// Cycles of an update that the ledger predicts too, by the ledger's name for it; the costliest of its name.
struct MeasuredTime {
    std::string event;
    std::int64_t bytes = 0;
    CycleCount cycles = 0;
};

/// Which part of it; the two halves take about as long.
enum class Share { all, tuning_and_mixture, pages_keys_and_values };

/// @pre `both` has been started.
std::vector<MeasuredTime> play_scenario(LockStep& both,
                                        const Layout& layout,
                                        const BuiltImage& built,
                                        const ScenarioOptions& options,
                                        Share share);

}  // namespace dialplate

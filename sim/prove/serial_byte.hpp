// What the models of the serial units hand to the board, and count against a driver.
#pragma once

#include <cstdint>
#include <functional>

namespace dialplate {

/// Cycles of the microcontroller's clock since its reset.
using CycleCount = std::uint64_t;

/// A byte has left: when its last bit was out, and what it was.
using ByteSink = std::function<void(CycleCount done, std::uint8_t byte)>;

}  // namespace dialplate

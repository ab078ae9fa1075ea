// What the display takes in a sketch: the emitted code linked with the smallest sketch that makes every
// call of the engine, less the same sketch without a display. The bench's own loop, with which the proof
// runs, is heavier and would be weighed with it.
//
// The reading of the touch sheet stays outside, as it does in the ledger.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"

#include <filesystem>
#include <string>

namespace dialplate {

/// Compiles both.
/// @pre The emitted code stands in `directory`, see write_code(); more files are written there.
/// @return What the compiler said if it failed; empty: they are built.
std::string build_weights(const Toolchain& toolchain,
                          const Layout& layout,
                          const BuiltImage& built,
                          const std::filesystem::path& directory);

/// Flash and static RAM of the display; zeros if the firmware is larger than the part.
/// @pre build_weights() had no complaint.
FirmwareSize weight(const Layout& layout, const std::filesystem::path& directory);

}  // namespace dialplate

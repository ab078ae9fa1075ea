// The proof of one layout: the emitted firmware on the simulated microcontroller against the same engine on
// the PC, byte by byte and pixel by pixel.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prove/lock_step.hpp"
#include "sim/prove/scenario.hpp"
#include "sim/prove/toolchain.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

struct ProvenTime {
    std::string event;
    std::optional<Cycles> predicted;  ///< By the ledger; absent: it names no such event.
    Cycles measured;
};

struct Pictures {
    int width = 0, height = 0;
    std::vector<std::uint16_t> expected, actual;  ///< RGB565, row-major.
};

struct Proof {
    std::string layout;  ///< File.
    std::string
        refusal;  ///< Why there is no proof: not emitted, not compiled. Empty: there is one.
    std::string toolchain;
    std::int64_t flash_predicted = 0, flash_linked = 0;  ///< Engine, driver, image; bytes.
    std::int64_t ram_predicted = 0, ram_measured = 0;    ///< Memory, engine, stack; bytes.
    std::int64_t flash_left = 0, ram_left = 0;           ///< With what the layout says is taken.
    Comparison compared;
    BusFaults faults;
    std::vector<ProvenTime> time;
    std::optional<Pictures> pictures;  ///< Of the update that went wrong.

    /// Of the pins and the display together.
    [[nodiscard]] std::int64_t bus_faults() const;
    [[nodiscard]] bool ok() const;
};

/// @pre `on_pc` was made from `layout` without errors.
/// @param in_firmware  The image for the firmware; the same, except when a test plants a fault.
Proof prove(const Toolchain& toolchain,
            const Layout& layout,
            const BuiltImage& on_pc,
            const BuiltImage& in_firmware,
            const ScenarioOptions& options);

}  // namespace dialplate

// The proof of one layout: the emitted firmware on the simulated microcontroller against the same engine on
// the PC, byte by byte and pixel by pixel.
#pragma once

#include "sim/emit/emission.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prototype/play.hpp"
#include "sim/prove/lock_step.hpp"
#include "sim/prove/scenario.hpp"
#include "sim/prove/toolchain.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

struct ProvenTime {
    std::string event;
    std::optional<Cycles> predicted;  ///< By the ledger; absent: it names no such event.
    Cycles measured;
    /// Cycles that the bus alone would need for the bytes of the event; 0 where nothing is predicted.
    double bus_alone = 0.0;

    /// How much of the bus's limit was reached, 0..1.
    [[nodiscard]] double share_of_limit(Cycles time) const {
        return time.value > 0 ? bus_alone / static_cast<double>(time.value) : 0.0;
    }
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
    // Zeros where they were not asked for, see ProofOptions::weigh; bytes.
    std::int64_t flash_predicted = 0, flash_linked = 0;  ///< Engine, driver, image.
    std::int64_t ram_predicted = 0, ram_measured = 0;    ///< Memory, engine, stack.
    std::int64_t flash_room = 0, ram_room = 0;           ///< Beside what the layout says is taken.
    std::string over_budget;  ///< What is too much, and what could be dropped; empty: it fits.
    Comparison compared;
    BusFaults faults;
    std::vector<ProvenTime> time;
    std::optional<Pictures> pictures;  ///< Of the update that went wrong.

    /// Of the pins and the display together.
    [[nodiscard]] std::int64_t bus_faults() const;
    [[nodiscard]] bool ok() const;
};

struct ProofOptions {
    ScenarioOptions scenario;
    std::optional<std::vector<PlayStep>> play;  ///< Done in place of the scenario.
    /// Play the halves of the scenario at the same time, on two boards.
    bool two_boards = true;
    bool weigh = true;  ///< Link the code once more, to hold flash and RAM against the ledger.
};

/// A fault on the side of the firmware alone, for tests of the proof.
struct Planted {
    const BuiltImage* image = nullptr;                      ///< In place of the one on the PC.
    std::function<void(std::vector<EmittedFile>&)> change;  ///< Of the code that was emitted.
};

/// @pre `built` was made from `layout` without errors.
Proof prove(const Toolchain& toolchain,
            const Layout& layout,
            const BuiltImage& built,
            const ProofOptions& options,
            const Planted& planted = {});

}  // namespace dialplate

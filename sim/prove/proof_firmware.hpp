// The firmware of a proof: the code that is emitted for a layout, with a main of its own that does what the
// bench says, so that the PC can do the same beside it.
#pragma once

#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"
#include "sim/prove/touch_chip.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace dialplate {

/// What the bench may say; the first byte of each order.
namespace order {
inline constexpr std::uint8_t none = 0;   ///< Nothing was fed.
inline constexpr std::uint8_t set = 1;    ///< Value, then four bytes, lowest first.
inline constexpr std::uint8_t touch = 2;  ///< x, y: two bytes each, lowest first.
inline constexpr std::uint8_t lift = 3;   ///< The finger is gone.
inline constexpr std::uint8_t page = 4;   ///< Number of the page.
inline constexpr std::uint8_t time = 5;   ///< The clock, two bytes.
inline constexpr std::uint8_t serve =
    6;  ///< Services at most, two bytes; 0: until nothing is left.
inline constexpr std::uint8_t listen = 7;  ///< Tells the events: motion, held, key (two bytes).
inline constexpr std::uint8_t feel = 8;  ///< Reads the sheet; tells 1, x, y, or 0 without a finger.
inline constexpr std::uint8_t palette = 9;  ///< Number of the palette.
}  // namespace order

/// What the firmware marks.
namespace proof_mark {
inline constexpr std::uint8_t ready = 1;   ///< Waits for an order; the bus is at rest.
inline constexpr std::uint8_t begun = 2;   ///< Before the first service of an order.
inline constexpr std::uint8_t served = 3;  ///< After a service; more is waiting.
inline constexpr std::uint8_t idle = 4;    ///< After a service; the glass shows everything.
}  // namespace proof_mark

/// Whether the simulated microcontrollers know this one: the ATmega328P and the ATmega2560.
bool can_simulate(const Mcu& mcu);

/// The board that the emitted wiring is made for.
/// @pre can_simulate()
BoardOptions board_for(const Layout& layout);

/// Where the touch converter of the emitted wiring is; empty if the layout answers no finger.
std::optional<TouchWiring> sheet_of(const Layout& layout, const BuiltImage& built);

struct BuiltFirmware {
    std::string complaint;         ///< The compiler's; empty: it was built.
    std::filesystem::path elf;     ///< To be proven.
    std::filesystem::path around;  ///< The same bench without display code, for weighing.
};

/// Emits and compiles.
/// @param directory  Empty, and the caller's to remove.
BuiltFirmware build_proof_firmware(const Toolchain& toolchain,
                                   const Layout& layout,
                                   const BuiltImage& built,
                                   const std::filesystem::path& directory);

}  // namespace dialplate

// The firmware of a proof: the code that is emitted for a layout, with a main of its own that does what the
// bench says, so that the PC can do the same beside it.
#pragma once

#include "sim/emit/emission.hpp"
#include "sim/image/build.hpp"
#include "sim/layout/layout.hpp"
#include "sim/prove/board.hpp"
#include "sim/prove/toolchain.hpp"
#include "sim/prove/touch_chip.hpp"

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <vector>

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

/// Writes the emitted files.
/// @return Whether all could be written.
bool write_code(const std::vector<EmittedFile>& code, const std::filesystem::path& directory);

/// Compiles with the directory of `elf` as the one where includes are found.
/// @return What the compiler said if it failed; empty: it stands at `elf`.
std::string build_for(const Toolchain& toolchain,
                      const Layout& layout,
                      const std::vector<std::filesystem::path>& sources,
                      const std::filesystem::path& elf);

/// The firmware to be proven.
/// @pre The emitted code stands beside `elf`.
/// @return As build_for().
std::string build_proof_firmware(const Toolchain& toolchain,
                                 const Layout& layout,
                                 const BuiltImage& built,
                                 const std::filesystem::path& elf);

}  // namespace dialplate

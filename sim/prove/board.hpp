// A microcontroller on the bench: the simulated AVR with a display at its pins, fed with an ELF file and
// watched from outside.
//
// The core, flash, timers, ports and converter are libsimavr's. Taken over, because libsimavr 1.6 does
// not keep the time of these: SPI and USART as SPI master (spi_model.hpp, usart_model.hpp), reads of PINx
// (lines driven from outside survive the firmware's writes to the port), sleep (no waiting on the PC), and
// the four cycles that entering an interrupt takes (AVR data sheets, interrupt response time).
// Not modelled: pin-change and external interrupts of the lines driven from outside, the synchroniser of
// the inputs, brown-out, fuses, the boot loader.
//
// The firmware talks to the bench through three registers that the engine leaves alone: GPIOR0, every write
// is a mark with its cycle; GPIOR1, every read takes the next byte that feed() was given (0 when there
// is none); GPIOR2, every write is a byte for told().
#pragma once

#include "sim/layout/units.hpp"
#include "sim/prove/display_port.hpp"
#include "sim/prove/spi_model.hpp"
#include "sim/prove/wiring.hpp"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace dialplate {

struct BoardOptions {
    std::string mcu = "atmega328p";  ///< "atmega328p" or "atmega2560".
    Hertz clock{16e6};
    DisplayWiring display;
    SpiTiming spi;
    int interrupt_entry_cycles = 4;  ///< 0: as libsimavr has it.
};

/// A write of the firmware to GPIOR0.
struct Mark {
    std::uint8_t value = 0;
    CycleCount at = 0;  ///< Start of the one-cycle OUT: differences are exact.
};

/// What a driver did wrong on the bus.
struct BusFaults {
    std::int64_t collisions = 0;            ///< SPI writes while a byte shifted: lost.
    std::int64_t overruns = 0;              ///< USART writes with the buffer full: lost.
    std::int64_t edges_while_shifting = 0;  ///< Of data/command or select.
    [[nodiscard]] std::int64_t total() const {
        return collisions + overruns + edges_while_shifting;
    }
};

enum class Stop {
    mark,    ///< The firmware wrote to GPIOR0.
    cycles,  ///< As many cycles as allowed have passed.
    ended,   ///< Asleep with interrupts off.
    crashed  ///< An instruction that is none, or a jump out of the program.
};

/// Sizes of the loaded firmware, in bytes.
struct FirmwareSize {
    int flash = 0;  ///< Code, constants and the start values of data.
    int data = 0;   ///< .data and .bss.
};

class Board {
public:
    explicit Board(const BoardOptions& options);
    ~Board();
    Board(const Board&) = delete;
    Board& operator=(const Board&) = delete;

    /// Loads a firmware and resets. Once per board.
    /// @return What is wrong, a sentence; empty: nothing.
    [[nodiscard]] std::optional<std::string> load(const std::filesystem::path& elf);
    [[nodiscard]] FirmwareSize size() const;

    /// Runs until the next mark, and stands right behind the instruction that set it.
    Stop run_until_mark(CycleCount at_most);
    /// Runs for `cycles` or a few more (an instruction, or up to the next event while asleep).
    Stop run_for(CycleCount cycles);
    [[nodiscard]] CycleCount cycles() const;
    [[nodiscard]] const std::vector<Mark>& marks() const;

    void observe_bus(BusObserver observer);
    [[nodiscard]] std::int64_t bus_bytes() const;
    /// Faults so far; a byte still on its way is handed on first if it is due.
    [[nodiscard]] BusFaults faults() const;
    /// Shortest distance of two write strobes of the parallel bus, in cycles.
    [[nodiscard]] CycleCount fastest_write() const;

    /// Puts a level on a pin from outside; it counts where the firmware has made the pin an input.
    void drive(PinPlace pin, bool level);
    /// Leaves the pin to its pull-up, or to 0 without one.
    void let_go(PinPlace pin);
    /// Calls when the level that a pin shows outside changes (floating counts as high).
    void watch(PinPlace pin, std::function<void(bool level)> changed);
    /// Level that a pin drives or shows: 1 where it drives high or floats.
    [[nodiscard]] bool output(PinPlace pin) const;
    [[nodiscard]] bool is_output(PinPlace pin) const;
    /// Asked for the voltage at a converter input whenever a conversion starts.
    /// @param millivolts  Channel 0..15 to 0..5000; the reference is 5000.
    void supply_analog(std::function<int(int channel)> millivolts);

    void feed(const std::vector<std::uint8_t>& bytes);
    [[nodiscard]] std::size_t unread() const;
    /// What the firmware wrote to GPIOR2 since the last call.
    std::vector<std::uint8_t> told();

    /// Greatest depth of the stack so far, bytes: RAM above .bss was painted before the start, and this is
    /// the distance from its end to the lowest byte that changed.
    [[nodiscard]] int stack_mark() const;
    /// Bytes of stack in use now.
    [[nodiscard]] int stack_now() const;
    /// Paints what lies below the stack in use again: stack_mark() counts from now on.
    void paint_stack();
    [[nodiscard]] std::uint8_t peek(int address) const;

private:
    struct Inside;
    std::unique_ptr<Inside> in_;
};

}  // namespace dialplate

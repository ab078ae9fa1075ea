// Link over the hardware SPI that asks the flag after each byte. The plainest of the links, and the one
// that is safe whatever else happens on the chip; 22 cycles a byte or more.
#pragma once

#include "ui/mcu/context_core.hpp"
#include "ui/mcu/lines.hpp"
#include "ui/mcu/spi_pins.hpp"
#include "ui/mcu/window_commands.hpp"

#include <avr/io.h>

#include <stdint.h>

namespace dialplate {

/// @tparam DataOrCommand, Select, Reset  Pin or NoPin.
/// @tparam divider  Clock of the microcontroller over that of the bus: 2, 4, 8, 16, 32, 64 or 128.
template <class DataOrCommand, class Select, class Reset = NoPin, uint8_t divider = 2>
struct SpiPolled {
    static_assert(divider == 2 || divider == 4 || divider == 8 || divider == 16 || divider == 32 ||
                      divider == 64 || divider == 128,
                  "the SPI divides the clock by 2, 4, 8, 16, 32, 64 or 128");

    using Contexts = FastContextCore;
    using Rows = void;
    using Wiring = ControlLines<DataOrCommand, Select, Reset>;

    static void begin() {
        SpiMaster::high();
        SpiMaster::output();
        SpiClock::output();
        SpiData::output();
        Wiring::prepare();
        // Mode 0, highest bit first: the controllers sample at the rising edge (data sheets, memory).
        SPCR = static_cast<uint8_t>(_BV(SPE) | _BV(MSTR) | rate);
        SPSR = doubled ? _BV(SPI2X) : 0;
    }

    static void reset() { Wiring::reset(); }
    static void select() { Wiring::select(); }
    static void release() { Wiring::release(); }

    __attribute__((noinline)) static void command(uint8_t byte) {
        Wiring::expect_command();
        send(byte);
        Wiring::expect_data();
    }

    __attribute__((noinline)) static void parameter(uint8_t byte) { send(byte); }
    static void window(MemoryRange columns, MemoryRange pages) {
        window_by_parameters<SpiPolled>(columns, pages);
    }

    /// `count` pixels of two bytes, count at least 1.
    __attribute__((always_inline)) static void run(uint8_t first, uint8_t second, uint16_t count) {
        do {
            send(first);
            send(second);
        } while (--count != 0);
    }

    /// `count` pixels of three bytes, count at least 1.
    __attribute__((always_inline)) static void run(uint8_t first,
                                                   uint8_t second,
                                                   uint8_t third,
                                                   uint16_t count) {
        do {
            send(first);
            send(second);
            send(third);
        } while (--count != 0);
    }

    static void finish() {}

private:
    // SPR1:0 and SPI2X (data sheet, relationship between SCK and the oscillator frequency; memory).
    static constexpr bool doubled = divider == 2 || divider == 8 || divider == 32;
    static constexpr uint8_t rate = divider <= 4 ? 0 : divider <= 16 ? 1 : divider <= 64 ? 2 : 3;

    __attribute__((always_inline)) static void send(uint8_t byte) {
        SPDR = byte;
        while (!(SPSR & _BV(SPIF))) {
        }
    }
};

}  // namespace dialplate
